import { selectInPlace } from "../../base/statistics/index.ts";

/** The numbers of one column, summed up over every row. */
export interface ColumnRange {
  readonly count: number;
  readonly low: number;
  readonly high: number;
  readonly median: number;
  /** 1st and 99th percentile: a lone impossible value does not move them. */
  readonly low01: number;
  readonly high99: number;
  readonly isWhole: boolean;
  /** Every number is the same. */
  readonly isConstant: boolean;
  /** No number, or only zeros. */
  readonly isDead: boolean;
  /** Steps upward or level as a share of all steps. */
  readonly risingShare: number;
}

const MEDIAN_OF = 4001;

/** Sums up a column; quantiles are of every n-th number when there are more than 4001. */
export function columnRange(values: Float64Array): ColumnRange {
  let count = 0;
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  let isWhole = true;
  let rising = 0;
  let previous = Number.NaN;
  for (let at = 0; at < values.length; at++) {
    const value = values[at]!;
    if (Number.isNaN(value)) continue;
    count++;
    if (value < low) low = value;
    if (value > high) high = value;
    if (isWhole && Math.floor(value) !== value) isWhole = false;
    if (value >= previous) rising++;
    previous = value;
  }
  const isConstant = count > 0 && low === high;
  return {
    count,
    low,
    high,
    ...spreadQuantiles(values),
    isWhole: isWhole && count > 0,
    isConstant,
    isDead: count === 0 || (low === 0 && high === 0),
    risingShare: count > 1 ? rising / (count - 1) : 0,
  };
}

function spreadQuantiles(values: Float64Array): { median: number; low01: number; high99: number } {
  const step = Math.max(1, Math.floor(values.length / MEDIAN_OF));
  const every = new Float64Array(Math.ceil(values.length / step));
  let count = 0;
  for (let at = 0; at < values.length; at += step) {
    const value = values[at]!;
    if (!Number.isNaN(value)) every[count++] = value;
  }
  if (count === 0) return { median: Number.NaN, low01: Number.NaN, high99: Number.NaN };
  const rank = (share: number) => Math.floor(share * (count - 1));
  const middle = rank(0.5);
  const median = selectInPlace(every.subarray(0, count), middle);
  return {
    median,
    low01: selectInPlace(every.subarray(0, middle + 1), rank(0.01)),
    high99: selectInPlace(every.subarray(middle, count), rank(0.99) - middle),
  };
}

/** Share of the numbers outside a range. */
export function shareOutside(values: Float64Array, low: number, high: number): number {
  let count = 0;
  let outside = 0;
  for (let at = 0; at < values.length; at++) {
    const value = values[at]!;
    if (Number.isNaN(value)) continue;
    count++;
    if (value < low || value > high) outside++;
  }
  return count === 0 ? 0 : outside / count;
}
