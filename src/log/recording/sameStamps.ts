import { holeLimitS } from "./recording.ts";
import { isSameRow } from "./rows.ts";
import type { Walk } from "./walk.ts";

/** Rows of the log in order, each with its own time. */
export interface SpreadRows {
  readonly rows: Int32Array;
  readonly timeS: Float64Array;
  readonly duplicateRows: readonly number[];
  /** Rows whose time was moved because another row carries the same stamp. */
  readonly movedRows: number;
  readonly firstMovedRow: number | null;
  /** First rows of stretches in which the clock stood still while rows went on, and their seconds. */
  readonly stillRows: readonly number[];
  readonly stillS: readonly number[];
}

/** Drops rows written twice. A coarse clock cannot tell a row written twice from an unchanged reading. */
export function withoutDuplicates(walk: Walk): number[] {
  const duplicates: number[] = [];
  if (walk.stamps.isCoarse) return duplicates;
  let kept = Math.min(1, walk.kept);
  let stampStart = 0;
  for (let i = 1; i < walk.kept; i++) {
    const isNewStamp = walk.timeS[i] !== walk.timeS[kept - 1];
    if (isNewStamp) stampStart = kept;
    else if (repeatsOneOf(walk, stampStart, kept, walk.rows[i]!)) {
      duplicates.push(walk.rows[i]!);
      continue;
    }
    walk.rows[kept] = walk.rows[i]!;
    walk.timeS[kept++] = walk.timeS[i]!;
  }
  walk.kept = kept;
  return duplicates;
}

/** Looks at the last few rows of the stamp only, so that a clock that stands still stays linear. */
function repeatsOneOf(walk: Walk, start: number, end: number, row: number): boolean {
  for (let i = Math.max(start, end - 4); i < end; i++) {
    if (isSameRow(walk.channels, walk.rows[i]!, row)) return true;
  }
  return false;
}

/** Gives rows that share a stamp times of their own, spread evenly up to the next stamp. */
export function spreadSameStamps(walk: Walk, duplicateRows: readonly number[]): SpreadRows {
  const count = walk.kept;
  const spread = {
    rows: walk.rows.slice(0, count),
    timeS: new Float64Array(count),
    duplicateRows,
    movedRows: 0,
    firstMovedRow: null as number | null,
    stillRows: [] as number[],
    stillS: [] as number[],
  };
  let shiftS = 0;
  for (let start = 0; start < count; ) {
    let end = start + 1;
    while (end < count && walk.timeS[end] === walk.timeS[start]) end++;
    const stamp = placeStamp(walk, start, end);
    for (let i = start; i < end; i++) {
      spread.timeS[i] = stamp.firstS + (i - start) * stamp.stepS + shiftS;
    }
    if (end - start > 1) {
      spread.movedRows += end - start - 1;
      spread.firstMovedRow ??= walk.rows[start + 1]!;
    }
    if (stamp.stillS > 0) {
      spread.stillRows.push(walk.rows[start]!);
      spread.stillS.push(stamp.stillS);
      shiftS += stamp.stillS;
    }
    start = end;
  }
  return spread;
}

interface PlacedStamp {
  readonly firstS: number;
  readonly stepS: number;
  /** Seconds that the clock lost while it stood still. */
  readonly stillS: number;
}

function placeStamp(walk: Walk, start: number, end: number): PlacedStamp {
  const { stepS, rowsPerStamp } = walk.stamps;
  const count = end - start;
  const stampS = walk.timeS[start]!;
  const rowS = stepS / rowsPerStamp;
  const spanS = end < walk.kept ? walk.timeS[end]! - stampS : count * rowS;
  const lostS = count * rowS - spanS;
  if (lostS > holeLimitS(rowS)) return { firstS: stampS, stepS: rowS, stillS: lostS };
  const isLong = spanS > 1.5 * Math.max(stepS, count * rowS);
  if (isLong) return { firstS: stampS, stepS: Math.min(rowS, spanS / count), stillS: 0 };
  const opensPiece = start === 0 || stampS - walk.timeS[start - 1]! > 1.5 * stepS;
  if (opensPiece && count < rowsPerStamp - 0.5) {
    return { firstS: stampS + spanS - count * rowS, stepS: rowS, stillS: 0 };
  }
  return { firstS: stampS, stepS: spanS / count, stillS: 0 };
}
