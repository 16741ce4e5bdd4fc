import { holeLimitS } from "./recording.ts";
import { isSameRow } from "./rows.ts";
import type { Walk } from "./walk.ts";

/** Rows that may stand in the wrong place together. */
const MOST_LATE_ROWS = 64;
/** Rows kept that are looked back over for their place: a stamp that belongs farther back is no late row. */
const MOST_ROWS_BACK = 2 * MOST_LATE_ROWS;
/** A late row fits between its neighbours when no step becomes shorter than this share of the median, */
const SHORTEST_STEP_SHARE = 0.25;
/** and the mean step there not shorter than this share: rows between complete rows would halve it. */
const LOWEST_MEAN_STEP_SHARE = 0.75;

/**
 * Puts a few late rows where their stamps belong, if they fit there: sorting them leaves ordinary steps.
 * A clock that was set back does not fit, as its rows fall between rows that are already complete.
 * @returns how many rows from `next` on were placed; 0 when they do not fit
 */
export function sortedIn(walk: Walk, next: number): number {
  const late = lateRows(walk, next);
  if (late === 0) return 0;
  const start = firstKeptAfter(walk, smallestTimeS(walk, next, late));
  if (start < 0) return 0;
  const entries = blockOf(walk, start, next, late);
  const around = neighbours(walk, start, entries, next + late);
  if (!isOrdinary(walk, around, new Set(walk.rows.subarray(next, next + late)))) return 0;
  for (let i = 0; i < late; i++) walk.events.disorderedRows.push(walk.rows[next + i]!);
  entries.forEach((entry, i) => {
    walk.rows[start + i] = entry.row;
    walk.timeS[start + i] = entry.timeS;
  });
  walk.kept = start + entries.length;
  return late;
}

interface Entry {
  readonly row: number;
  readonly timeS: number;
}

/** Rows from `next` on that lie before the newest row kept, if the log recovers soon; else 0. */
function lateRows(walk: Walk, next: number): number {
  const newestS = walk.timeS[walk.kept - 1]!;
  const end = Math.min(walk.rows.length, next + MOST_LATE_ROWS + 1);
  for (let i = next; i < end; i++) if (walk.timeS[i]! + walk.offsetS >= newestS) return i - next;
  return end === walk.rows.length ? end - next : 0;
}

function smallestTimeS(walk: Walk, next: number, late: number): number {
  let smallest = Number.POSITIVE_INFINITY;
  for (let i = next; i < next + late; i++) smallest = Math.min(smallest, walk.timeS[i]! + walk.offsetS);
  return smallest;
}

/** First row kept that lies after `timeS`, near the newest row; -1 when that is too far back. */
function firstKeptAfter(walk: Walk, timeS: number): number {
  const farthest = Math.max(0, walk.kept - MOST_ROWS_BACK);
  let start = walk.kept;
  while (start > farthest && walk.timeS[start - 1]! > timeS) start--;
  return start === 0 || walk.timeS[start - 1]! <= timeS ? start : -1;
}

function blockOf(walk: Walk, start: number, next: number, late: number): Entry[] {
  const entries: Entry[] = [];
  for (let i = start; i < walk.kept; i++) entries.push({ row: walk.rows[i]!, timeS: walk.timeS[i]! });
  for (let i = next; i < next + late; i++) {
    entries.push({ row: walk.rows[i]!, timeS: walk.timeS[i]! + walk.offsetS });
  }
  return entries.sort((a, b) => a.timeS - b.timeS || a.row - b.row);
}

/**
 * True when there is room for the late rows: between the rows around them in sorted order no step is much too
 * short, none is a hole, the mean is not clearly shorter than usual, and no stamp comes twice (unless the
 * clock is coarse or the rows are the same).
 */
function isOrdinary(walk: Walk, around: readonly Entry[], late: ReadonlySet<number>): boolean {
  const { stepS, isCoarse, rowsPerStamp } = walk.stamps;
  const first = around.findIndex((entry) => late.has(entry.row));
  const last = around.findLastIndex((entry) => late.has(entry.row));
  const stretch = around.slice(Math.max(0, first - 1), last + 2);
  let different = 0;
  for (let i = 1; i < stretch.length; i++) {
    const before = stretch[i - 1]!;
    const entry = stretch[i]!;
    const step = entry.timeS - before.timeS;
    if (step > holeLimitS(stepS) || (step > 0 && step < SHORTEST_STEP_SHARE * stepS)) return false;
    const isRepeated = step === 0 && isSameRow(walk.channels, before.row, entry.row);
    if (step === 0 && !isRepeated && !isCoarse) return false;
    if (step > 0 || isCoarse) different++;
  }
  const spanS = stretch.at(-1)!.timeS - stretch[0]!.timeS;
  return spanS >= (LOWEST_MEAN_STEP_SHARE * different * stepS) / rowsPerStamp;
}

/** The block with the rows that stand before and after it. */
function neighbours(walk: Walk, start: number, entries: readonly Entry[], recovery: number): Entry[] {
  const around = [...entries];
  if (start > 0) around.unshift({ row: walk.rows[start - 1]!, timeS: walk.timeS[start - 1]! });
  if (recovery < walk.rows.length) {
    around.push({ row: walk.rows[recovery]!, timeS: walk.timeS[recovery]! + walk.offsetS });
  }
  return around;
}
