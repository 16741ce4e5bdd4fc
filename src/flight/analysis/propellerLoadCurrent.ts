import type { Facts } from "../../aircraft/facts.ts";
import { METRES_PER_INCH, revPerSecond } from "../../base/quantity/index.ts";
import type { Recording } from "../../log/recording/index.ts";
import { backVoltageV, noLoadCurrentA, propellerPowerW } from "../../physics/index.ts";
import { channelOrWhy } from "./channelOrWhy.ts";
import type { DayFacts } from "./dayFacts.ts";
import { NO_DIAMETER } from "./identifiedSentences.ts";
import { CONSTANTS_HALF_WIDTH, dayAir, motorConstants } from "./motorLoadConstants.ts";
import type { RowRange } from "./segments.ts";

/** Power coefficient of this propeller in this state (at rest or in the air), with its 95 % half-width. */
export interface KnownCoefficient {
  readonly value: number;
  readonly halfWidth: number;
}

/** A current nobody measured; `basis` marks it wherever it is shown. */
export interface EstimatedCurrent {
  readonly basis: "estimated";
  /** Out of the pack, all motors, from `firstRow` on; NaN where speed or volts are missing. */
  readonly currentA: Float64Array;
  readonly firstRow: number;
  /** Relative 95 % half-width, one for the whole log: its parts do not average out. */
  readonly relativeHalfWidth: number;
  /** The same on the ground, where the coefficient is the static one. */
  readonly relativeHalfWidthAtRest: number;
}

export type EstimatedCurrentOrWhy =
  | { readonly estimate: EstimatedCurrent; readonly why: null }
  | { readonly estimate: null; readonly why: string };

/** Spread of the coefficient within a flight as the airspeed changes (common practice, no published source), 95 %. */
const UNLOADING_HALF_WIDTH = 0.2;

/**
 * Pack current of a log without a current sensor: the propeller's power at the logged speed needs the motor current
 * Im = P / (w / kv) + I0, and the pack gives Im (Im R + w / kv) / V for it. Standby current is not in it.
 */
export function estimateCurrent(
  recording: Recording,
  range: RowRange,
  facts: Facts,
  day: DayFacts,
  coefficient: KnownCoefficient,
): EstimatedCurrentOrWhy {
  const constants = motorConstants(facts);
  if (constants.motor === null) return { estimate: null, why: constants.why };
  const { diameterIn } = facts.propeller;
  if (diameterIn === null) return { estimate: null, why: NO_DIAMETER };
  const volts = channelOrWhy(recording, "packVoltage");
  if (volts.why !== null) return { estimate: null, why: volts.why };
  const speed = channelOrWhy(recording, "shaftSpeed");
  if (speed.why !== null) return { estimate: null, why: speed.why };
  const { motor } = constants;
  const air = dayAir(facts, day);
  const currentA = new Float64Array(range.lastRow - range.firstRow + 1);
  for (let k = 0; k < currentA.length; k++) {
    const packV = volts.values[range.firstRow + k]!;
    const turns = revPerSecond(speed.values[range.firstRow + k]!);
    if (turns === 0) continue;
    const back = backVoltageV(turns, motor.kvRpmPerV);
    const shaftW = propellerPowerW(coefficient.value, air.density, turns, diameterIn * METRES_PER_INCH);
    const motorA = shaftW / back + noLoadCurrentA(motor.noLoadA, packV);
    currentA[k] = (facts.motor.count * motorA * (motorA * motor.pathOhm + back)) / packV;
  }
  const relativeHalfWidthAtRest = Math.hypot(
    coefficient.halfWidth / coefficient.value,
    air.relativeHalfWidth,
    // Losses are about a tenth of the power each.
    0.1 * CONSTANTS_HALF_WIDTH.ohm,
    0.1 * CONSTANTS_HALF_WIDTH.noLoad,
    facts.sensors.voltageAccuracyPct / 100,
  );
  const relativeHalfWidth = Math.hypot(relativeHalfWidthAtRest, UNLOADING_HALF_WIDTH);
  const { firstRow } = range;
  return {
    estimate: { basis: "estimated", currentA, firstRow, relativeHalfWidth, relativeHalfWidthAtRest },
    why: null,
  };
}
