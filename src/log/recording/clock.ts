import type { Notice } from "../../base/notices/index.ts";
import type { ReadLog } from "../reading/index.ts";
import { clockNotices } from "./clockNotices.ts";
import { holeLimitS } from "./recording.ts";
import { isEveryRowInOrder } from "./rows.ts";
import { spreadSameStamps, withoutDuplicates } from "./sameStamps.ts";
import { stampsOf } from "./stamps.ts";
import { straighten } from "./straighten.ts";

/** The rows of a log in the order of one clock that only goes forward. */
export interface HonestClock {
  /** Row of the log behind each row kept; null where that is every row in order. */
  readonly sourceRows: Int32Array | null;
  /** Seconds, strictly rising from 0. */
  readonly timeS: Float64Array;
  /** Rows of the log that follow a jump of unknown length. */
  readonly jumpRows: ReadonlySet<number>;
  readonly notices: readonly Notice[];
}

/**
 * One honest clock: several rows per stamp spread evenly, midnight and counters that start again added up,
 * rows written twice once, a little disorder sorted, a clock set back going on by one median step.
 * Rows without a readable time are left out. Linear in the rows; the log is not changed.
 */
export function honestClock(log: ReadLog): HonestClock {
  if (isHonestAlready(log.timeS)) return asItIs(log.timeS);
  const channels = [...log.channels.values()];
  const timed = rowsWithTime(log);
  const stamps = stampsOf(log, timed, channels);
  const walk = straighten(log, channels, timed, stamps);
  const spread = spreadSameStamps(walk, withoutDuplicates(walk));
  const startS = spread.timeS[0] ?? 0;
  for (let i = 0; i < spread.timeS.length; i++) spread.timeS[i]! -= startS;
  return {
    sourceRows: isEveryRowInOrder(spread.rows, log.rows) ? null : spread.rows,
    timeS: spread.timeS,
    jumpRows: new Set(walk.events.jumpRows),
    notices: clockNotices(log, walk, spread),
  };
}

/** The common case in one pass: every step goes forward and none is long enough to be a hole. */
function isHonestAlready(timeS: Float64Array): boolean {
  const longestS = holeLimitS(0);
  for (let row = 1; row < timeS.length; row++) {
    const stepS = timeS[row]! - timeS[row - 1]!;
    if (!(stepS > 0 && stepS <= longestS)) return false;
  }
  return timeS.length > 1;
}

function asItIs(logTimeS: Float64Array): HonestClock {
  const startS = logTimeS[0]!;
  const timeS = startS === 0 ? logTimeS : logTimeS.map((value) => value - startS);
  return { sourceRows: null, timeS, jumpRows: new Set(), notices: [] };
}

function rowsWithTime(log: ReadLog): Int32Array {
  const rows = new Int32Array(log.rows);
  let count = 0;
  for (let row = 0; row < log.rows; row++) if (Number.isFinite(log.timeS[row])) rows[count++] = row;
  return rows.subarray(0, count);
}
