import type { RowRange } from "./segments.ts";

/** An extreme value and the row it stands in. */
export interface Extreme {
  readonly row: number;
  readonly value: number;
}

/** First row of the largest value; null when no row holds one. */
export function highest(values: Float64Array, { firstRow, lastRow }: RowRange): Extreme | null {
  let best = -1;
  for (let row = firstRow; row <= lastRow; row++) {
    if (values[row]! > (best < 0 ? Number.NEGATIVE_INFINITY : values[best]!)) best = row;
  }
  return best < 0 ? null : { row: best, value: values[best]! };
}

/** First row of the smallest value; null when no row holds one. */
export function lowest(values: Float64Array, { firstRow, lastRow }: RowRange): Extreme | null {
  let best = -1;
  for (let row = firstRow; row <= lastRow; row++) {
    if (values[row]! < (best < 0 ? Number.POSITIVE_INFINITY : values[best]!)) best = row;
  }
  return best < 0 ? null : { row: best, value: values[best]! };
}

/** First row of the largest product of two channels; null when no row holds both. */
export function highestProduct(
  first: Float64Array,
  second: Float64Array,
  { firstRow, lastRow }: RowRange,
): Extreme | null {
  let best = -1;
  let largest = Number.NEGATIVE_INFINITY;
  for (let row = firstRow; row <= lastRow; row++) {
    const product = first[row]! * second[row]!;
    if (product > largest) {
      largest = product;
      best = row;
    }
  }
  return best < 0 ? null : { row: best, value: largest };
}
