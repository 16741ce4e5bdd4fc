import { mean as compensatedMean } from "simple-statistics";
import { type Numbers, requireCount, requireFinite } from "./preconditions.ts";

/**
 * Arithmetic mean, summed with error compensation (Kahan-Babuska).
 * Edge cases: an empty list and a value that is not finite are refused.
 * @throws RangeError
 */
export function mean(values: Numbers): number {
  requireCount(values, 1, "mean");
  requireFinite(values, "mean");
  return compensatedMean(values as readonly number[]);
}
