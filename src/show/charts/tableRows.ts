import { bisector } from "./d3.ts";
import { timeStepS } from "./timeTicks.ts";

export const MOST_TABLE_ROWS = 200;
/** Regular steps that a table starts with, leaving room for extremes. */
const MOST_REGULAR_ROWS = 160;
const SHORTEST_STEP_S = 10;

const nearestRow = bisector((value: number) => value).center;

export interface TableRows {
  readonly rows: readonly number[];
  /** Seconds between the regular rows. */
  readonly stepS: number;
}

/**
 * Rows of a chart's table: the row nearest to each regular step (10 s or the next longer round step that
 * fits), and every extreme given. At most 200, in rising order; extremes come first when room is short.
 */
export function tableRows(
  x: ArrayLike<number>,
  range: { readonly first: number; readonly last: number },
  extremes: readonly number[],
): TableRows {
  const from = x[range.first] ?? 0;
  const span = (x[range.last] ?? from) - from;
  const stepS = Math.max(SHORTEST_STEP_S, timeStepS(span, MOST_REGULAR_ROWS));
  const kept = new Set(extremes.slice(0, MOST_TABLE_ROWS));
  for (let count = 0; count * stepS <= span && kept.size < MOST_TABLE_ROWS; count++) {
    kept.add(nearestRow(x, from + count * stepS, range.first, range.last + 1));
  }
  if (kept.size < MOST_TABLE_ROWS) kept.add(range.last);
  return { rows: [...kept].sort((a, b) => a - b), stepS };
}
