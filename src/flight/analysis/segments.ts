import type { Hole, Recording } from "../../log/recording/index.ts";
import { workingChannel } from "./channelOrWhy.ts";

/** Rows `firstRow`..`lastRow`, both included. */
export interface RowRange {
  readonly firstRow: number;
  readonly lastRow: number;
}

/** A longer hole ends the flight on both sides. */
export const LONGEST_BRIDGED_HOLE_S = 60;

/** A stretch of the log without a hole that ends a flight. */
export interface Segment extends RowRange {
  /** True where a hole, not the log's own end, bounds it. */
  readonly startsAfterHole: boolean;
  readonly endsAtHole: boolean;
}

/** Long holes end a flight, unless current or shaft speed tells all through them whether the motor runs. */
export function endsFlight(recording: Recording, hole: Hole): boolean {
  if (hole.isUnknownLength) return true;
  if (hole.endS - hole.startS <= LONGEST_BRIDGED_HOLE_S) return false;
  return !(["current", "shaftSpeed"] as const).some((channel) => {
    const values = workingChannel(recording, channel);
    return values !== null && tellsThrough(recording, values, hole);
  });
}

function tellsThrough({ timeS }: Recording, values: Float64Array, { rowBefore, rowAfter }: Hole): boolean {
  let beforeS = timeS[rowBefore]!;
  for (let row = rowBefore + 1; row <= rowAfter; row++) {
    if (row < rowAfter && Number.isNaN(values[row]!)) continue;
    if (timeS[row]! - beforeS > LONGEST_BRIDGED_HOLE_S) return false;
    beforeS = timeS[row]!;
  }
  return true;
}

/** The log cut at every hole over 60 s and every jump of unknown length. */
export function segmentsOf(recording: Recording): readonly Segment[] {
  const segments: Segment[] = [];
  let firstRow = 0;
  for (const hole of recording.holes) {
    if (!endsFlight(recording, hole)) continue;
    const lastRow = lastRowBefore(recording.timeS, hole);
    segments.push({ firstRow, lastRow, startsAfterHole: firstRow > 0, endsAtHole: true });
    firstRow = lastRow + 1;
  }
  segments.push({ firstRow, lastRow: recording.rows - 1, startsAfterHole: firstRow > 0, endsAtHole: false });
  return segments;
}

/** Rows inside the hole (they lack volts or amps) go to the nearer side. */
function lastRowBefore(timeS: Float64Array, hole: Hole): number {
  const middleS = (hole.startS + hole.endS) / 2;
  let row = hole.rowBefore;
  while (row + 1 < hole.rowAfter && timeS[row + 1]! < middleS) row++;
  return row;
}
