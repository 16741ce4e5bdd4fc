import type { RowRange } from "./segments.ts";

/**
 * The rows from `startS` to `endS`, and one more on either side when the time lies between two rows, so that
 * a sum can cut the step there. For extremes see `rowsWithin`. `timeS` rises; at least one row.
 */
export function rowsBetween(timeS: Float64Array, startS: number, endS: number): RowRange {
  const last = timeS.length - 1;
  const after = firstRowFrom(timeS, startS);
  const firstRow = after <= last && timeS[after] === startS ? after : after - 1;
  const lastRow = firstRowFrom(timeS, endS);
  return { firstRow: Math.max(0, firstRow), lastRow: Math.min(last, lastRow) };
}

/** The rows from `startS` to `endS`, both included; empty (first above last) when there is none. */
export function rowsWithin(timeS: Float64Array, startS: number, endS: number): RowRange {
  const next = firstRowFrom(timeS, endS);
  const lastRow = next < timeS.length && timeS[next] === endS ? next : next - 1;
  return { firstRow: firstRowFrom(timeS, startS), lastRow };
}

/** First row at or after `atS`, by bisection; the number of rows when there is none. */
function firstRowFrom(timeS: Float64Array, atS: number): number {
  let low = 0;
  let high = timeS.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (timeS[middle]! < atS) low = middle + 1;
    else high = middle;
  }
  return low;
}
