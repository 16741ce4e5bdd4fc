import { rememberedOf } from "../../base/remembered/index.ts";
import { quantileInPlace } from "../../base/statistics/index.ts";

/** Values looked at for a spread: enough for a threshold, whatever the length of the log. */
const MOST_VALUES = 20_000;
const LOW_SHARE = 0.01;
const HIGH_SHARE = 0.99;

/** 1st and 99th percentile of a channel; both NaN without a value. */
export interface Spread {
  readonly low: number;
  readonly high: number;
}

/**
 * The 1st to 99th percentile of the values that are there; of evenly spaced rows where the log is long. Channels are
 * never changed in place, and a dozen questions ask for the spread of the same one.
 */
export const spreadOf = rememberedOf(measuredSpread);

function measuredSpread(values: Float64Array): Spread {
  const stride = Math.max(1, Math.ceil(values.length / MOST_VALUES));
  const present = new Float64Array(Math.ceil(values.length / stride));
  let count = 0;
  for (let row = 0; row < values.length; row += stride) {
    const value = values[row]!;
    if (!Number.isNaN(value)) present[count++] = value;
  }
  if (count === 0) return { low: Number.NaN, high: Number.NaN };
  const found = present.subarray(0, count);
  return { low: quantileInPlace(found, LOW_SHARE), high: quantileInPlace(found, HIGH_SHARE) };
}
