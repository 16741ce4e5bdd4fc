import { type Numbers, requireFinite } from "./preconditions.ts";
import { quantileInPlace } from "./quantile.ts";

/** Makes the median absolute deviation estimate a normal standard deviation: 1 / z(0.75). */
export const SCALE_OF_MAD = 1.482602218505602;

/**
 * Median: the middle value, or the mean of the two middle ones. Linear in time, on a copy.
 * Edge cases: an empty list and values that are not finite are refused.
 * @throws RangeError
 */
export function median(values: Numbers): number {
  requireFinite(values, "median");
  return medianInPlace(new Float64Array(values));
}

/** The same without a copy: `values`, finite numbers only, is left in another order. */
export function medianInPlace(values: Float64Array): number {
  return quantileInPlace(values, 0.5);
}

/**
 * Scaled median absolute deviation: 1.4826 times the median distance from the median (R: mad), which
 * estimates the standard deviation of normal data and ignores up to half of outliers.
 * Edge case: 0 when more than half of the values are equal, so a caller needs a floor of its own.
 * @param centre the median, when the caller has it already
 * @throws RangeError
 */
export function scaledMad(values: Numbers, centre: number = median(values)): number {
  requireFinite(values, "scaledMad");
  const distances = new Float64Array(values.length);
  for (let i = 0; i < values.length; i++) distances[i] = Math.abs(values[i]! - centre);
  return SCALE_OF_MAD * medianInPlace(distances);
}
