import { atLeast, between, type Quantity, unknown } from "../../base/quantity/index.ts";
import { hiddenOffsetA } from "./hiddenOffset.ts";
import type { Summed } from "./summed.ts";
import { LOWER_BOUND_CEILING, NO_ROWS_TO_SUM } from "./sumSentences.ts";

/**
 * Half-width at k = 2 from sensor gain, sampling and resolution: independent of each other, the gain one
 * constant over the flight. Sampling: 2 sqrt(sum (change x step)^2 / 12).
 */
export function halfWidthOfSum(value: number, { gainShare, sum, resolutionVariance }: Summed): number {
  return Math.hypot(gainShare * value, 2 * Math.sqrt(sum.samplingVariance + resolutionVariance));
}

/** The plain trapezoid sum as it stands, holes left out, no offset corrected; the interval knows of the offset. */
export function coveredQuantity(summed: Summed | { readonly why: string }, unit: "mAh" | "Wh"): Quantity {
  if ("why" in summed) return unknown(unit, summed.why);
  const { sum, offsetA, perUnit } = summed;
  if (sum.coveredS === 0) return unknown(unit, NO_ROWS_TO_SUM);
  const halfWidth = halfWidthOfSum(sum.covered, summed);
  const hidden = hiddenOffsetA(offsetA) * sum.perAmpere;
  const low = sum.covered - halfWidth;
  if (summed.isAtCeiling) {
    return atLeast(sum.covered / perUnit, low / perUnit, unit, "measured", LOWER_BOUND_CEILING);
  }
  const high = sum.covered + halfWidth + hidden;
  return between(sum.covered / perUnit, low / perUnit, high / perUnit, unit, "measured");
}
