import { isSameRow } from "./rows.ts";
import type { Walk } from "./straighten.ts";

/** Rows that may stand in the wrong place together. */
const MOST_LATE_ROWS = 64;
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
  if (!isOrdinary(walk, start, entries, next + late)) return 0;
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
  let start = walk.kept;
  while (start > 0 && walk.timeS[start - 1]! > timeS) start--;
  const isNear = walk.kept - start <= MOST_LATE_ROWS * 2;
  return isNear ? start : -1;
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
 * True when the sorted rows keep ordinary steps: none much too short, no stamp twice unless the clock is coarse
 * or the rows are the same, and on the whole no denser than the rest of the log.
 */
function isOrdinary(walk: Walk, start: number, entries: readonly Entry[], recovery: number): boolean {
  const { stepS, isCoarse, rowsPerStamp } = walk.stamps;
  const around = neighbours(walk, start, entries, recovery);
  let different = 0;
  for (let i = 1; i < around.length; i++) {
    const before = around[i - 1]!;
    const entry = around[i]!;
    const step = entry.timeS - before.timeS;
    if (step > 0 && step < SHORTEST_STEP_SHARE * stepS) return false;
    if (step === 0 && !isCoarse) {
      if (!isSameRow(walk.channels, before.row, entry.row)) return false;
    } else different++;
  }
  const spanS = around.at(-1)!.timeS - around[0]!.timeS;
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
