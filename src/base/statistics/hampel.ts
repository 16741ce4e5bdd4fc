import { SCALE_OF_MAD } from "./median.ts";
import { type Numbers, requireFinite, requireWithin } from "./preconditions.ts";

export interface HampelResult {
  /** 1 where a value stands out, else 0. */
  readonly isOutlier: Uint8Array;
  /** Median of the window centred on each value; the value itself among the first and last `halfWindow`. */
  readonly medians: Float64Array;
}

/**
 * Hampel identifier: a value is an outlier when it lies more than `threshold` scaled median absolute deviations from
 * the median of the 2 `halfWindow` + 1 values centred on it; non-recursive, the first and last `halfWindow` values are
 * never outliers (Hampel, JASA 69, 1974, 383; Pearson, Mining Imperfect Data, 2005; as in R's pracma::hampel).
 * `floor` bounds the deviation from below: without it a window of equal values makes an outlier of any other value.
 * @param halfWindow 1 or more
 * @param threshold in standard deviations; 0 makes an outlier of all that differs from its median
 * @param floor in the unit of the values, such as the resolution of the channel; 0 or more
 * @throws RangeError for values that are not finite: drop the missing ones first
 */
export function hampel(values: Numbers, halfWindow: number, threshold = 3, floor = 0): HampelResult {
  requireFinite(values, "hampel");
  requireWithin(halfWindow, 1, 10_000, "the half window");
  requireWithin(threshold, 0, 1e6, "the threshold");
  requireWithin(floor, 0, Number.MAX_VALUE, "the floor");
  const isOutlier = new Uint8Array(values.length);
  const medians = new Float64Array(values);
  const window = new Float64Array(2 * halfWindow + 1);
  for (let i = halfWindow; i < values.length - halfWindow; i++) {
    for (let j = 0; j < window.length; j++) window[j] = values[i - halfWindow + j]!;
    const centre = middleOf(window);
    for (let j = 0; j < window.length; j++) window[j] = Math.abs(window[j]! - centre);
    const deviation = Math.max(SCALE_OF_MAD * middleOf(window), floor);
    medians[i] = centre;
    if (Math.abs(values[i]! - centre) > threshold * deviation) isOutlier[i] = 1;
  }
  return { isOutlier, medians };
}

/** Sorts a short window in place, by insertion, and gives the middle. */
function middleOf(window: Float64Array): number {
  for (let i = 1; i < window.length; i++) {
    const value = window[i]!;
    let j = i - 1;
    for (; j >= 0 && window[j]! > value; j--) window[j + 1] = window[j]!;
    window[j + 1] = value;
  }
  return window[(window.length - 1) / 2]!;
}
