import { medianInPlace, withScratch } from "../../base/statistics/index.ts";
import { spreadOf } from "./spread.ts";

/** Below this much spread nothing runs: every row is rest. */
const IDLE_SPREAD_A = 2;
/** Rest is what lies in the lowest tenth of the spread, */
const REST_SHARE_OF_SPREAD = 0.1;
/** if at least this share of the rows does. */
const LEAST_REST_SHARE = 0.02;
const LEAST_REST_ROWS = 3;

/**
 * What the current sensor reads with the motor off, amperes: the median of the rows in the lowest tenth of
 * the 1st-99th percentile spread. Null when too few rows are that low (the motor never stops).
 */
export function restCurrentA(currentA: Float64Array): number | null {
  const spread = spreadOf(currentA);
  const width = spread.high - spread.low;
  const limitA = width < IDLE_SPREAD_A ? Number.POSITIVE_INFINITY : spread.low + REST_SHARE_OF_SPREAD * width;
  return withScratch(currentA.length, (rest) => medianUpTo(limitA, currentA, rest));
}

function medianUpTo(limitA: number, currentA: Float64Array, rest: Float64Array): number | null {
  let restRows = 0;
  let rows = 0;
  for (let row = 0; row < currentA.length; row++) {
    const value = currentA[row]!;
    if (Number.isNaN(value)) continue;
    rows++;
    if (value <= limitA) rest[restRows++] = value;
  }
  if (restRows < LEAST_REST_ROWS || restRows < LEAST_REST_SHARE * rows) return null;
  return medianInPlace(rest.subarray(0, restRows));
}

/** A rest reading above this is noise about zero, not an offset. */
const OFFSET_FROM_A = -0.05;

/** The sensor's offset, amperes, negative; 0 when it reads zero or a positive current (a load) at rest. */
export function negativeOffsetA(restA: number | null): number {
  return restA !== null && restA <= OFFSET_FROM_A ? restA : 0;
}
