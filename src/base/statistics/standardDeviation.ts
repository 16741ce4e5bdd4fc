import { mean } from "./mean.ts";
import { type Numbers, requireCount } from "./preconditions.ts";

/** Sum of squared deviations from the mean, two passes (no cancellation for large means). */
export function sumOfSquaredDeviations(values: Numbers): number {
  const centre = mean(values);
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += (values[i]! - centre) ** 2;
  return sum;
}

/**
 * Sample standard deviation, divisor n - 1 (spreadsheets: STDEV.S), two-pass algorithm
 * (Chan, Golub and LeVeque, The American Statistician 37, 1983, equation 1.1) from a mean summed with compensation.
 * Edge cases: fewer than two values and values that are not finite are refused.
 * @throws RangeError
 */
export function sampleStandardDeviation(values: Numbers): number {
  requireCount(values, 2, "sampleStandardDeviation");
  return Math.sqrt(sumOfSquaredDeviations(values) / (values.length - 1));
}
