import type { ChannelName } from "../../base/channels/index.ts";
import type { RowRun } from "./lowRuns.ts";
import { spreadOf } from "./spread.ts";
import { stoppedCurrent } from "./stoppedCurrent.ts";
import { idleReading, stuckStretches } from "./stuckSensors.ts";

/** Rows in which the current sensor says nothing although it writes numbers, and the range of those. */
export interface FailedStretch extends RowRun {
  readonly low: number;
  readonly high: number;
  readonly seconds: number;
}

/**
 * Where the current sensor failed in flight: no signal while the motor runs on, or one value up to the last row
 * while another channel moves. A value repeated elsewhere may be true, and the sensor's ceiling is a lower bound.
 */
export function failedCurrent(
  timeS: Float64Array,
  channels: ReadonlyMap<ChannelName, Float64Array>,
  ceilingA: number | null,
): readonly FailedStretch[] {
  const amps = channels.get("current");
  if (amps === undefined) return [];
  const idle = idleReading(spreadOf(amps));
  const lastRow = amps.findLastIndex((value) => !Number.isNaN(value));
  const stuck = stuckStretches(timeS, channels).filter(
    ({ channel, witness, value, lastRow: last }) =>
      channel === "current" &&
      value !== ceilingA &&
      (value <= idle ? witness === "packVoltage" : last === lastRow),
  );
  return united([...stoppedCurrent(timeS, channels), ...stuck]).map((run) => described(timeS, amps, run));
}

function united(runs: readonly RowRun[]): RowRun[] {
  const joined: RowRun[] = [];
  for (const { firstRow, lastRow } of runs.toSorted((one, other) => one.firstRow - other.firstRow)) {
    const before = joined.at(-1);
    if (before === undefined || firstRow > before.lastRow + 1) joined.push({ firstRow, lastRow });
    else joined[joined.length - 1] = { ...before, lastRow: Math.max(before.lastRow, lastRow) };
  }
  return joined;
}

function described(timeS: Float64Array, amps: Float64Array, { firstRow, lastRow }: RowRun): FailedStretch {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let row = firstRow; row <= lastRow; row++) {
    if (amps[row]! < low) low = amps[row]!;
    if (amps[row]! > high) high = amps[row]!;
  }
  return { firstRow, lastRow, low, high, seconds: timeS[lastRow]! - timeS[firstRow]! };
}

/** The channels with the current missing in those rows. */
export function withoutFailed(
  channels: ReadonlyMap<ChannelName, Float64Array>,
  stretches: readonly RowRun[],
): ReadonlyMap<ChannelName, Float64Array> {
  const amps = channels.get("current");
  if (amps === undefined || stretches.length === 0) return channels;
  const kept = amps.slice();
  for (const { firstRow, lastRow } of stretches) kept.fill(Number.NaN, firstRow, lastRow + 1);
  return new Map(channels).set("current", kept);
}
