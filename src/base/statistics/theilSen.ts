import { kendallS } from "./mannKendall.ts";
import { median } from "./median.ts";
import { normalQuantile } from "./normal.ts";
import {
  type Numbers,
  requireCount,
  requireFinite,
  requireSameLength,
  requireWithin,
} from "./preconditions.ts";

export interface MedianSlope {
  /** Median of the slopes between all pairs of points. */
  readonly slope: number;
  /** median y - slope times median x (Conover). */
  readonly intercept: number;
  /** Ends of the two-sided interval; null when so few points have none at this confidence. */
  readonly low: number | null;
  readonly high: number | null;
  /** Number of slopes: pairs of points with different x. */
  readonly pairs: number;
}

/**
 * Theil-Sen slope with the interval of Gilbert (Statistical Methods for Environmental Pollution Monitoring, 1987,
 * section 16.5): the slopes of rank (N' - C)/2 and (N' + C)/2 + 1, C = z sqrt(Var S), interpolated between ranks as
 * U.S. EPA 530/R-09-007 (2009), example 17-7, does. Pairs with equal x are left out.
 * Edge cases: fewer than two points or one single x are refused.
 * @param confidence two-sided, 0.5 to 0.999
 * @throws RangeError
 */
export function theilSen(x: Numbers, y: Numbers, confidence = 0.95): MedianSlope {
  requireSameLength(x, y, "theilSen");
  requireCount(x, 2, "theilSen");
  requireFinite(x, "theilSen (x)");
  requireFinite(y, "theilSen (y)");
  requireWithin(confidence, 0.5, 0.999, "the confidence of a slope");
  const slopes = pairSlopes(x, y).sort();
  if (slopes.length === 0) throw new RangeError(`theilSen needs at least two different x: all are ${x[0]}`);
  const slope = median(slopes);
  const reach = normalQuantile((1 + confidence) / 2) * Math.sqrt(kendallS(x, y).variance);
  return {
    slope,
    intercept: median(y) - slope * median(x),
    low: valueAtRank(slopes, (slopes.length - reach) / 2),
    high: valueAtRank(slopes, (slopes.length + reach) / 2 + 1),
    pairs: slopes.length,
  };
}

function pairSlopes(x: Numbers, y: Numbers): Float64Array {
  const slopes: number[] = [];
  for (let i = 0; i < x.length; i++) {
    for (let j = i + 1; j < x.length; j++) {
      if (x[j] !== x[i]) slopes.push((y[j]! - y[i]!) / (x[j]! - x[i]!));
    }
  }
  return Float64Array.from(slopes);
}

/** Ranks count from 1; between two of them linear; null outside. */
function valueAtRank(sorted: Float64Array, rank: number): number | null {
  if (!(rank >= 1 && rank <= sorted.length)) return null;
  const below = Math.floor(rank);
  const low = sorted[below - 1]!;
  return below === rank ? low : low + (rank - below) * (sorted[below]! - low);
}
