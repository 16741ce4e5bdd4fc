import type { Hole, Recording } from "../../log/recording/index.ts";

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

export function endsFlight(hole: Hole): boolean {
  return hole.isUnknownLength || hole.endS - hole.startS > LONGEST_BRIDGED_HOLE_S;
}

/** The log cut at every hole over 60 s and every jump of unknown length. */
export function segmentsOf(recording: Recording): readonly Segment[] {
  const segments: Segment[] = [];
  let firstRow = 0;
  for (const hole of recording.holes) {
    if (!endsFlight(hole)) continue;
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
