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

/** Beyond this the library's selection, which no order of the values can make slow. */
const FEW_VALUES = 8192;

/**
 * The value of rank `rank` (0 is the smallest), in linear time. `values` is reordered: what stands before
 * `rank` is not larger, what stands after is not smaller. Values must be finite.
 */
export function selectInPlace(values: Float64Array, rank: number): number {
  requireWithin(rank, 0, values.length - 1, "a rank");
  if (values.length <= FEW_VALUES) partition(values, rank);
  else quickselect(values as unknown as number[], rank);
  return values[rank]!;
}

/** Hoare's selection (Communications of the ACM 4, 1961, algorithm 65), about the middle of three values. */
function partition(values: Float64Array, rank: number): void {
  let first = 0;
  let last = values.length - 1;
  while (first < last) {
    const pivot = middleOf(values[first]!, values[(first + last) >>> 1]!, values[last]!);
    let below = first;
    let above = last;
    while (below <= above) {
      while (values[below]! < pivot) below++;
      while (values[above]! > pivot) above--;
      if (below > above) break;
      const value = values[below]!;
      values[below++] = values[above]!;
      values[above--] = value;
    }
    if (rank <= above) last = above;
    else if (rank >= below) first = below;
    else return;
  }
}

/** The median of three. */
export function middleOf(a: number, b: number, c: number): number {
  return Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
}

function smallestFrom(values: Float64Array, start: number): number {
  let smallest = values[start]!;
  for (let i = start + 1; i < values.length; i++) if (values[i]! < smallest) smallest = values[i]!;
  return smallest;
}
