import { SECONDS_PER_DAY } from "../../base/quantity/index.ts";
import type { ReadLog } from "../reading/index.ts";
import { sortedIn } from "./disorder.ts";
import { holeLimitS } from "./recording.ts";
import { replayLength } from "./replay.ts";
import type { Stamps } from "./stamps.ts";
import type { ClockEvents, Walk } from "./walk.ts";

/** A jump forward by more than this may be a clock that was set: its true length is not known. */
export const UNKNOWN_JUMP_S = 3600;
/** Pause that a clock may take over its wrap before the step back counts as a clock that was set. */
const LONGEST_PAUSE_AT_WRAP_S = 3600;
/** Steps between two rows that leave room for one more. */
const ROOM_FOR_A_ROW = 1.5;

/**
 * Makes the times of `rows` go forward: wraps added up, rows written twice or late put in place, a clock set
 * back goes on by one median step. Times of the result never fall; equal stamps stay equal.
 */
export function straighten(
  log: ReadLog,
  channels: readonly Float64Array[],
  rows: Int32Array,
  stamps: Stamps,
): Walk {
  const timeS = new Float64Array(rows.length);
  for (let i = 0; i < rows.length; i++) timeS[i] = log.timeS[rows[i]!]!;
  const walk: Walk = {
    log,
    channels,
    stamps,
    rows: rows.slice(),
    timeS,
    kept: Math.min(1, rows.length),
    offsetS: 0,
    events: noEvents(),
  };
  const ordinaryS = holeLimitS(stamps.stepS);
  let next = 1;
  while (next < rows.length) {
    const stepS = timeS[next]! + walk.offsetS - timeS[walk.kept - 1]!;
    if (stepS >= 0 && stepS <= ordinaryS) keep(walk, next++);
    else next = stepS < 0 ? afterStepBack(walk, next, stepS) : afterLongStep(walk, next, stepS);
  }
  return walk;
}

function noEvents(): ClockEvents {
  return {
    wrapRows: [],
    backwardRows: [],
    backwardS: [],
    jumpRows: [],
    disorderedRows: [],
    replayedRows: [],
    loneStampRows: [],
  };
}

function keep(walk: Walk, next: number): void {
  walk.rows[walk.kept] = walk.rows[next]!;
  walk.timeS[walk.kept] = walk.timeS[next]! + walk.offsetS;
  walk.kept++;
}

/**
 * True when the row after `next` goes on where the row before it stopped, leaving room for the row between:
 * then only the stamp of that row is damaged.
 */
function isLoneStamp(walk: Walk, next: number): boolean {
  if (next + 1 >= walk.rows.length) return false;
  const stepS = walk.timeS[next + 1]! + walk.offsetS - walk.timeS[walk.kept - 1]!;
  return stepS >= ROOM_FOR_A_ROW * walk.stamps.stepS && stepS <= holeLimitS(walk.stamps.stepS);
}

function afterLongStep(walk: Walk, next: number, stepS: number): number {
  const row = walk.rows[next]!;
  if (isLoneStamp(walk, next)) {
    walk.events.loneStampRows.push(row);
    return next + 1;
  }
  if (stepS > UNKNOWN_JUMP_S) walk.events.jumpRows.push(row);
  if (stepS > SECONDS_PER_DAY) walk.offsetS -= stepS - UNKNOWN_JUMP_S;
  keep(walk, next);
  return next + 1;
}

function afterStepBack(walk: Walk, next: number, stepS: number): number {
  const { wrapS } = walk.log.clock;
  const row = walk.rows[next]!;
  if (wrapS !== null && stepS + wrapS >= 0 && stepS + wrapS <= LONGEST_PAUSE_AT_WRAP_S) {
    walk.offsetS += wrapS;
    walk.events.wrapRows.push(row);
    keep(walk, next);
    return next + 1;
  }
  const replayed = replayLength(walk, next);
  if (replayed > 0) {
    for (let i = next; i < next + replayed; i++) walk.events.replayedRows.push(walk.rows[i]!);
    return next + replayed;
  }
  const sorted = sortedIn(walk, next);
  if (sorted > 0) return next + sorted;
  if (isLoneStamp(walk, next)) {
    walk.events.loneStampRows.push(row);
    return next + 1;
  }
  setForward(walk, next, stepS);
  return next + 1;
}

/** A clock that was set back: time goes on by one median step. */
function setForward(walk: Walk, next: number, stepS: number): void {
  walk.events.backwardRows.push(walk.rows[next]!);
  walk.events.backwardS.push(walk.stamps.stepS - stepS);
  walk.offsetS += walk.stamps.stepS - stepS;
  keep(walk, next);
}
