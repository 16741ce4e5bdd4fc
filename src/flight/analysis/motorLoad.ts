import type { Facts } from "../../aircraft/facts.ts";
import { known, type Quantity, unknown } from "../../base/quantity/index.ts";
import type { Recording } from "../../log/recording/index.ts";
import { LEAST_DUTY_FOR_EFFICIENCY, type MotorConstants, motorState } from "../../physics/index.ts";
import { channelOrWhy, workingChannel } from "./channelOrWhy.ts";
import { isAtCeiling } from "./currentAtCeiling.ts";
import type { DayFacts } from "./dayFacts.ts";
import { DUTY_TOO_LOW, NO_DIAMETER, NO_STEADY_POINT, wrongSettingStops } from "./identifiedSentences.ts";
import { type DayAir, dayAir, motorConstants } from "./motorLoadConstants.ts";
import { efficiencyHalfWidth, type LoadPoint, loadPoint, shaftPowerHalfWidth } from "./motorLoadPoint.ts";
import { type MotorSeries, motorSeries, standbyCurrentA } from "./motorLoadSeries.ts";
import type { SensorTiming } from "./packResistanceTiming.ts";
import { coefficientAt } from "./propellerLoad.ts";
import { type InFlightLoad, inFlightLoad, noInFlightLoad } from "./propellerLoadInFlight.ts";
import type { RowRange } from "./segments.ts";
import { CURRENT_AT_CEILING } from "./sumSentences.ts";
import { findWrongSetting, type WrongSetting } from "./wrongSetting.ts";

export interface MotorLoad {
  /** One motor along the range; null without the channels or constants. */
  readonly series: MotorSeries | null;
  /** On the static plateau. */
  readonly propellerPowerCoefficient: Quantity;
  readonly motorEfficiencyPct: Quantity;
  /** Share of the pack's volts at the motor on the static plateau; null without one. */
  readonly staticDuty: number | null;
  readonly inFlight: InFlightLoad;
  /** A speed sensor, kv or other setting that cannot be right; null when nothing speaks against them. */
  readonly wrongSetting: WrongSetting | null;
  /** kv that full throttle asks for, where it differs by more than 3 % from the one stated; else null. */
  readonly offeredKv: Quantity | null;
  /** Motor current times `factor` agrees with the pack current at full throttle. */
  readonly motorCurrentScale: { readonly factor: number; readonly relativeHalfWidth: number };
  /** Amps with the motor stopped, taken off first. */
  readonly standbyA: number;
}

/** Full throttle where the throttle is logged, percent. */
const FULL_THROTTLE_PCT = 98;
/** Duties between these are right; kv is offered where it is off by more than the first. */
const RIGHT_DUTY = 0.03;
/** Of kv from full throttle (path resistance 15 %, volts, amps and speed), 95 %. */
const KV_HALF_WIDTH = 0.018;

/**
 * First-order motor (Drela 2007) on every row, and the propeller's static power coefficient on the full-throttle
 * plateau. Several motors share the current equally. `flightRows` bounds the part in the air, null on
 * the ground; `timing` is that of the current sensor where it was found.
 */
export function identifyMotorLoad(
  recording: Recording,
  range: RowRange,
  facts: Facts,
  day: DayFacts,
  staticPlateau: RowRange | null,
  flightRows: RowRange | null,
  timing: SensorTiming | null,
): MotorLoad {
  const constants = motorConstants(facts);
  if (constants.motor === null) return withoutLoad(constants.why);
  for (const channel of ["packVoltage", "current", "shaftSpeed"] as const) {
    const { why } = channelOrWhy(recording, channel);
    if (why !== null) return withoutLoad(why);
  }
  if (isAtCeiling(recording, recording.channels.get("current")!, range)) {
    return withoutLoad(CURRENT_AT_CEILING);
  }
  const { motor } = constants;
  const standbyA = standbyCurrentA(recording, range);
  const air = dayAir(facts, day);
  const count = facts.motor.count;
  const point = staticPlateau && loadPoint(recording, staticPlateau, standbyA, count);
  const isFull = staticPlateau !== null && isFullThrottle(recording, staticPlateau);
  const wrongSetting = point && findWrongSetting({ point, isFull, motor, facts, air });
  const series = motorSeries(recording, range, motor, standbyA, count, timing);
  const duty = point && motorState(point.packV, point.packA, point.speedRevPerS, motor).duty;
  const staticPart = staticLoad(point, motor, facts, air, wrongSetting);
  return {
    series,
    ...staticPart,
    staticDuty: duty,
    inFlight: inFlightLoad(series, recording, flightRows, facts, air, staticPart, wrongSetting),
    wrongSetting,
    offeredKv: point && isFull && !wrongSetting ? offeredKv(point, motor) : null,
    motorCurrentScale: currentScale(duty, isFull && !wrongSetting),
    standbyA,
  };
}

function isFullThrottle(recording: Recording, { firstRow, lastRow }: RowRange): boolean {
  const throttle = workingChannel(recording, "throttle");
  if (throttle === null) return false;
  for (let row = firstRow; row <= lastRow; row++) if (throttle[row]! < FULL_THROTTLE_PCT) return false;
  return true;
}

function staticLoad(
  point: LoadPoint | null,
  motor: MotorConstants,
  facts: Facts,
  air: DayAir,
  wrong: WrongSetting | null,
): Pick<MotorLoad, "propellerPowerCoefficient" | "motorEfficiencyPct"> {
  const none = (why: string) => ({
    propellerPowerCoefficient: unknown("1", why),
    motorEfficiencyPct: unknown("%", why),
  });
  if (point === null) return none(NO_STEADY_POINT);
  if (wrong !== null) return none(wrongSettingStops(wrong.duty));
  const { duty, efficiency } = motorState(point.packV, point.packA, point.speedRevPerS, motor);
  if (!(duty >= LEAST_DUTY_FOR_EFFICIENCY) || efficiency === null) return none(DUTY_TOO_LOW);
  const coefficient = coefficientAt(point, motor, facts, air);
  const power = Math.hypot(shaftPowerHalfWidth(point, motor, facts), air.relativeHalfWidth);
  const ofEfficiency = efficiencyHalfWidth(point, motor, facts);
  const percent = 100 * efficiency;
  return {
    propellerPowerCoefficient: Number.isNaN(coefficient)
      ? unknown("1", NO_DIAMETER)
      : known(coefficient, power * coefficient, "1", "derived"),
    motorEfficiencyPct: known(percent, ofEfficiency * percent, "%", "derived"),
  };
}

function offeredKv(point: LoadPoint, motor: MotorConstants): Quantity | null {
  const kv = (60 * point.speedRevPerS) / (point.packV - point.packA * motor.pathOhm);
  if (!(Math.abs(kv / motor.kvRpmPerV - 1) > RIGHT_DUTY)) return null;
  return known(kv, KV_HALF_WIDTH * kv, "rev/min/V", "derived");
}

/** At full throttle motor and pack current are one: the duty found there corrects kv. */
function currentScale(duty: number | null, isFull: boolean): MotorLoad["motorCurrentScale"] {
  if (isFull && duty !== null) return { factor: duty, relativeHalfWidth: KV_HALF_WIDTH };
  return { factor: 1, relativeHalfWidth: 0.05 };
}

function withoutLoad(why: string): MotorLoad {
  return {
    series: null,
    propellerPowerCoefficient: unknown("1", why),
    motorEfficiencyPct: unknown("%", why),
    staticDuty: null,
    inFlight: noInFlightLoad(why),
    wrongSetting: null,
    offeredKv: null,
    motorCurrentScale: { factor: 1, relativeHalfWidth: 0 },
    standbyA: 0,
  };
}
