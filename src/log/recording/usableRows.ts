import type { ChannelName } from "../../base/channels/index.ts";
import { medianInPlace } from "../../base/statistics/index.ts";
import { type Hole, holeLimitS } from "./recording.ts";

/** The rows that sums can rest on, and the stretches without them. */
export interface UsableRows {
  readonly count: number;
  /** First to last usable row, seconds; 0 with fewer than two. */
  readonly durationS: number;
  /** Median step between usable rows; 0 with fewer than two. */
  readonly stepS: number;
  readonly holes: readonly Hole[];
}

/** What a usable row must hold, of those that the log has at all. */
export const NEEDED: readonly ChannelName[] = ["packVoltage", "current"];

/**
 * Usable rows hold pack volts and current. A log without one of the two is judged by the other, a log
 * without both by its times alone. `jumpRows` says which rows follow a jump of unknown length.
 */
export function usableRows(
  timeS: Float64Array,
  channels: ReadonlyMap<ChannelName, Float64Array>,
  followsJump: (row: number) => boolean,
): UsableRows {
  const needed = NEEDED.flatMap((channel) => channels.get(channel) ?? []);
  const usable = new Int32Array(timeS.length);
  let count = 0;
  for (let row = 0; row < timeS.length; row++) {
    let isUsable = true;
    for (const values of needed) if (Number.isNaN(values[row]!)) isUsable = false;
    if (isUsable) usable[count++] = row;
  }
  const rows = usable.subarray(0, count);
  const stepS = medianStepS(timeS, rows);
  return {
    count,
    durationS: count > 1 ? timeS[rows[count - 1]!]! - timeS[rows[0]!]! : 0,
    stepS,
    holes: holesBetween(timeS, rows, holeLimitS(stepS), followsJump),
  };
}

function medianStepS(timeS: Float64Array, rows: Int32Array): number {
  if (rows.length < 2) return 0;
  const steps = new Float64Array(rows.length - 1);
  for (let i = 1; i < rows.length; i++) steps[i - 1] = timeS[rows[i]!]! - timeS[rows[i - 1]!]!;
  return medianInPlace(steps);
}

function holesBetween(
  timeS: Float64Array,
  rows: Int32Array,
  limitS: number,
  followsJump: (row: number) => boolean,
): Hole[] {
  const holes: Hole[] = [];
  for (let i = 1; i < rows.length; i++) {
    const rowBefore = rows[i - 1]!;
    const rowAfter = rows[i]!;
    const startS = timeS[rowBefore]!;
    const endS = timeS[rowAfter]!;
    if (endS - startS <= limitS) continue;
    const isUnknownLength = anyRow(rowBefore + 1, rowAfter, followsJump);
    holes.push({ rowBefore, rowAfter, startS, endS, isUnknownLength });
  }
  return holes;
}

function anyRow(first: number, last: number, isSo: (row: number) => boolean): boolean {
  for (let row = first; row <= last; row++) if (isSo(row)) return true;
  return false;
}
