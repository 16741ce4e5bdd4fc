import type { ChannelName } from "../../base/channels/index.ts";
import { medianInPlace, withScratch } from "../../base/statistics/index.ts";
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
  let count = 0;
  let firstRow = -1;
  let lastRow = -1;
  for (let row = 0; row < timeS.length; row++) {
    if (!isUsable(needed, row)) continue;
    if (firstRow < 0) firstRow = row;
    lastRow = row;
    count++;
  }
  const stepS = medianStepS(timeS, needed, count);
  return {
    count,
    durationS: count > 1 ? timeS[lastRow]! - timeS[firstRow]! : 0,
    stepS,
    holes: holesBetween(timeS, needed, holeLimitS(stepS), followsJump),
  };
}

function isUsable(needed: readonly Float64Array[], row: number): boolean {
  for (let k = 0; k < needed.length; k++) if (Number.isNaN(needed[k]![row]!)) return false;
  return true;
}

function medianStepS(timeS: Float64Array, needed: readonly Float64Array[], count: number): number {
  if (count < 2) return 0;
  return withScratch(count - 1, (steps) => {
    let step = 0;
    let before = -1;
    for (let row = 0; row < timeS.length; row++) {
      if (!isUsable(needed, row)) continue;
      if (before >= 0) steps[step++] = timeS[row]! - timeS[before]!;
      before = row;
    }
    return medianInPlace(steps);
  });
}

function holesBetween(
  timeS: Float64Array,
  needed: readonly Float64Array[],
  limitS: number,
  followsJump: (row: number) => boolean,
): Hole[] {
  const holes: Hole[] = [];
  let rowBefore = -1;
  for (let row = 0; row < timeS.length; row++) {
    if (!isUsable(needed, row)) continue;
    if (rowBefore >= 0 && timeS[row]! - timeS[rowBefore]! > limitS) {
      const isUnknownLength = anyRow(rowBefore + 1, row, followsJump);
      holes.push({
        rowBefore,
        rowAfter: row,
        startS: timeS[rowBefore]!,
        endS: timeS[row]!,
        isUnknownLength,
      });
    }
    rowBefore = row;
  }
  return holes;
}

function anyRow(first: number, last: number, isSo: (row: number) => boolean): boolean {
  for (let row = first; row <= last; row++) if (isSo(row)) return true;
  return false;
}
