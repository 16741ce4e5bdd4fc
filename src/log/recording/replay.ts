import { isSameRow } from "./rows.ts";
import type { Walk } from "./walk.ts";

/**
 * How many rows from `next` on repeat, value for value and stamp for stamp, the last rows kept: a buffer
 * written twice. 0 when they do not repeat them up to the newest. Only where stamps tell rows apart.
 */
export function replayLength(walk: Walk, next: number): number {
  if (walk.stamps.isCoarse) return 0;
  const start = keptRowAt(walk, walk.timeS[next]! + walk.offsetS);
  if (start < 0) return 0;
  const length = walk.kept - start;
  if (next + length > walk.rows.length) return 0;
  for (let i = 0; i < length; i++) if (!isRepeated(walk, start + i, next + i)) return 0;
  return length;
}

function isRepeated(walk: Walk, kept: number, next: number): boolean {
  return (
    walk.timeS[kept] === walk.timeS[next]! + walk.offsetS &&
    isSameRow(walk.channels, walk.rows[kept]!, walk.rows[next]!)
  );
}

/** First row kept at exactly this time, by bisection; -1 when there is none. */
function keptRowAt(walk: Walk, timeS: number): number {
  let low = 0;
  let high = walk.kept;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (walk.timeS[middle]! < timeS) low = middle + 1;
    else high = middle;
  }
  return low < walk.kept && walk.timeS[low] === timeS ? low : -1;
}
