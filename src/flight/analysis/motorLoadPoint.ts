import type { Facts } from "../../aircraft/facts.ts";
import { revPerSecond } from "../../base/quantity/index.ts";
import { medianInPlace } from "../../base/statistics/index.ts";
import type { Recording } from "../../log/recording/index.ts";
import { type MotorConstants, motorState, NO_LOAD_VOLTS } from "../../physics/index.ts";
import { workingChannel } from "./channelOrWhy.ts";
import { CONSTANTS_HALF_WIDTH } from "./motorLoadConstants.ts";
import type { RowRange } from "./segments.ts";

/** Medians over a stretch of steady load. */
export interface LoadPoint {
  readonly packV: number;
  /** One motor's share, standby taken off. */
  readonly packA: number;
  readonly speedRevPerS: number;
}

/** Volts, amps of one motor and shaft speed over rows; null where a channel is missing or nothing turns. */
export function loadPoint(
  recording: Recording,
  rows: RowRange,
  standbyA: number,
  motorCount: number,
): LoadPoint | null {
  const medianOf = (channel: "packVoltage" | "current" | "shaftSpeed"): number => {
    const values = workingChannel(recording, channel)?.slice(rows.firstRow, rows.lastRow + 1);
    const finite = values?.filter((value) => Number.isFinite(value));
    return finite && finite.length > 0 ? medianInPlace(finite) : Number.NaN;
  };
  const packV = medianOf("packVoltage");
  const packA = (medianOf("current") - standbyA) / motorCount;
  const speedRevPerS = revPerSecond(medianOf("shaftSpeed"));
  return packV > 0 && packA > 0 && speedRevPerS > 0 ? { packV, packA, speedRevPerS } : null;
}

/**
 * Relative 95 % half-width of the shaft power: what each gain and constant moves, in quadrature. The whole
 * correction of the no-load current for voltage counts as uncertainty.
 */
export function shaftPowerHalfWidth(point: LoadPoint, motor: MotorConstants, facts: Facts): number {
  return relativeEffects(point, motor, facts, (moved, constants) =>
    Math.log(motorState(moved.packV, moved.packA, moved.speedRevPerS, constants).shaftPowerW),
  );
}

/** Likewise for the efficiency, where the gains of volts and amps cancel for the most part. */
export function efficiencyHalfWidth(point: LoadPoint, motor: MotorConstants, facts: Facts): number {
  return relativeEffects(point, motor, facts, (moved, constants) => {
    const { shaftPowerW } = motorState(moved.packV, moved.packA, moved.speedRevPerS, constants);
    return Math.log(shaftPowerW / (moved.packV * moved.packA));
  });
}

function relativeEffects(
  point: LoadPoint,
  motor: MotorConstants,
  { sensors }: Facts,
  logOf: (point: LoadPoint, motor: MotorConstants) => number,
): number {
  const base = logOf(point, motor);
  const { kv, ohm, noLoad } = CONSTANTS_HALF_WIDTH;
  const noLoadCorrection = Math.abs(Math.sqrt(point.packV / NO_LOAD_VOLTS) - 1);
  const effects = [
    logOf({ ...point, packA: point.packA * (1 + sensors.currentAccuracyPct / 100) }, motor),
    logOf({ ...point, packV: point.packV * (1 + sensors.voltageAccuracyPct / 100) }, motor),
    logOf(point, { ...motor, kvRpmPerV: motor.kvRpmPerV * (1 + kv) }),
    logOf(point, { ...motor, pathOhm: motor.pathOhm * (1 + ohm) }),
    logOf(point, { ...motor, noLoadA: motor.noLoadA * (1 + noLoad) }),
    logOf(point, {
      ...motor,
      noLoadA: motor.noLoadA * (1 + noLoadCorrection / Math.sqrt(point.packV / NO_LOAD_VOLTS)),
    }),
  ];
  return Math.hypot(...effects.map((moved) => moved - base));
}
