import { revPerSecond } from "../../base/quantity/index.ts";
import { medianInPlace } from "../../base/statistics/index.ts";
import { holeLimitS, type Recording } from "../../log/recording/index.ts";
import {
  backVoltageV,
  LEAST_DUTY_FOR_EFFICIENCY,
  type MotorConstants,
  motorCurrentA,
  noLoadCurrentA,
} from "../../physics/index.ts";
import { workingChannel } from "./channelOrWhy.ts";
import { loadFilters } from "./packResistanceFilter.ts";
import { shiftedCurrent } from "./packResistanceShift.ts";
import type { SensorTiming } from "./packResistanceTiming.ts";
import type { RowRange } from "./segments.ts";

/** One motor along the flight; arrays start at `firstRow`, NaN where it cannot be told or nothing turns. */
export interface MotorSeries {
  readonly firstRow: number;
  readonly motorCurrentA: Float64Array;
  /** Share of the pack's volts that reaches the motor. */
  readonly duty: Float64Array;
  readonly shaftPowerW: Float64Array;
  /** 0 to 1; NaN below a duty of 0.3. */
  readonly efficiency: Float64Array;
}

/** Below this the shaft counts as standing, rev/min. */
const STANDING_RPM = 60;
/** A current with the motor stopped beyond this is no standby current, A. */
const MOST_STANDBY_A = 3;

/** Median current with the shaft at a stand, A; 0 where the log never shows that. */
export function standbyCurrentA(recording: Recording, range: RowRange): number {
  const currentA = workingChannel(recording, "current");
  const speedRpm = workingChannel(recording, "shaftSpeed");
  if (currentA === null || speedRpm === null) return 0;
  const found: number[] = [];
  for (let row = range.firstRow; row <= range.lastRow; row++) {
    const amps = currentA[row]!;
    if (speedRpm[row]! < STANDING_RPM && Math.abs(amps) <= MOST_STANDBY_A) found.push(amps);
  }
  return found.length === 0 ? 0 : medianInPlace(Float64Array.from(found));
}

/**
 * Current, duty, shaft power and efficiency of one motor at every row; null without volts, amps and speed.
 * A current told late or through a filter is met half way: it is shifted, and volts and speed go through the filter.
 */
export function motorSeries(
  recording: Recording,
  range: RowRange,
  motor: MotorConstants,
  standbyA: number,
  motorCount: number,
  timing: SensorTiming | null,
): MotorSeries | null {
  const aligned = alignedRows(recording, range, timing);
  if (aligned === null) return null;
  const { packV, currentA, speedRpm } = aligned;
  const empty = () => new Float64Array(packV.length).fill(Number.NaN);
  const series = { motorCurrentA: empty(), duty: empty(), shaftPowerW: empty(), efficiency: empty() };
  for (let k = 0; k < packV.length; k++) {
    const volts = packV[k]!;
    const amps = Math.max(0, (currentA[k]! - standbyA) / motorCount);
    const turns = revPerSecond(speedRpm[k]!);
    const current = motorCurrentA(volts, amps, turns, motor.kvRpmPerV, motor.pathOhm);
    series.motorCurrentA[k] = current;
    if (!(current > 0 && speedRpm[k]! >= STANDING_RPM)) continue;
    series.duty[k] = amps / current;
    const power = (current - noLoadCurrentA(motor.noLoadA, volts)) * backVoltageV(turns, motor.kvRpmPerV);
    series.shaftPowerW[k] = power;
    if (amps >= LEAST_DUTY_FOR_EFFICIENCY * current) series.efficiency[k] = power / (volts * amps);
  }
  return { firstRow: range.firstRow, ...series };
}

function alignedRows(recording: Recording, range: RowRange, timing: SensorTiming | null) {
  const part = (channel: "packVoltage" | "current" | "shaftSpeed") =>
    workingChannel(recording, channel)?.subarray(range.firstRow, range.lastRow + 1) ?? null;
  const packV = part("packVoltage");
  const currentA = part("current");
  const speedRpm = part("shaftSpeed");
  if (packV === null || currentA === null || speedRpm === null) return null;
  if (timing === null) return { packV, currentA, speedRpm };
  const timeS = recording.timeS.subarray(range.firstRow, range.lastRow + 1);
  const samples = { timeS, packV, currentA, stepS: recording.stepS, holeS: holeLimitS(recording.stepS) };
  const filters = loadFilters(samples);
  const matched = (signal: Float64Array) => (timing.filterS > 0 ? filters(timing.filterS)(signal) : signal);
  return {
    packV: matched(packV),
    currentA: shiftedCurrent(samples, timing.shiftS),
    speedRpm: matched(speedRpm),
  };
}
