import { quickselect } from "simple-statistics";
import { type Numbers, requireCount, requireFinite, requireWithin } from "./preconditions.ts";

/**
 * Quantile by linear interpolation between order statistics at (n - 1) p: type 7 of Hyndman and Fan
 * (The American Statistician 50, 1996), the default of R and of spreadsheets (PERCENTILE.INC).
 * Linear in time (Floyd-Rivest selection on a copy). Edge cases: share 0 and 1 give the extremes; one value
 * is its own quantile; an empty list and values that are not finite are refused.
 * @param share 0 to 1, both included
 * @throws RangeError
 */
export function quantile(values: Numbers, share: number): number {
  requireFinite(values, "quantile");
  return quantileInPlace(new Float64Array(values), share);
}

/**
 * The same quantile without a copy: `values` is left in another order. For large arrays that the caller
 * owns and has already freed of NaN (this one does not look at each value again).
 * @throws RangeError
 */
export function quantileInPlace(values: Float64Array, share: number): number {
  requireCount(values, 1, "quantile");
  requireWithin(share, 0, 1, "the share of a quantile");
  const position = (values.length - 1) * share;
  const below = Math.floor(position);
  const low = selectInPlace(values, below);
  const fraction = position - below;
  return fraction === 0 ? low : low + fraction * (smallestFrom(values, below + 1) - low);
}

/** Up to here sorting natively is quicker than a selection that the compiler has not seen run yet. */
const SORTED_AT_ONCE = 8192;

/**
 * The value of rank `rank` (0 is the smallest), in linear time. `values` is reordered: what stands before
 * `rank` is not larger, what stands after is not smaller. Values must be finite.
 */
export function selectInPlace(values: Float64Array, rank: number): number {
  requireWithin(rank, 0, values.length - 1, "a rank");
  if (values.length <= SORTED_AT_ONCE) values.sort();
  else quickselect(values as unknown as number[], rank);
  return values[rank]!;
}

function smallestFrom(values: Float64Array, start: number): number {
  let smallest = values[start]!;
  for (let i = start + 1; i < values.length; i++) if (values[i]! < smallest) smallest = values[i]!;
  return smallest;
}
