import { normalCdf } from "./normal.ts";
import { type Numbers, requireCount, requireFinite, requireSameLength } from "./preconditions.ts";

/** Up to here, without ties, the chances are counted exactly. */
const EXACT_UP_TO = 60;

export interface KendallScore {
  /** Pairs that rise less pairs that fall. */
  readonly s: number;
  /** Variance of S without trend, with the correction for ties in both lists. */
  readonly variance: number;
  readonly hasTies: boolean;
}

export interface TrendTest extends KendallScore {
  /** (S - sign S) / sqrt(variance): with continuity correction; 0 when S is 0 or nothing varies. */
  readonly z: number;
  /** Kendall's tau-a: S over the number of pairs, -1 to 1. */
  readonly tau: number;
  /** One-sided: chance of an S at least this large without a trend. */
  readonly risingP: number;
  /** One-sided: chance of an S at most this large. */
  readonly fallingP: number;
  /** Counted over all orders (no ties, at most 60 values), else by the normal approximation. */
  readonly isExact: boolean;
}

/**
 * Mann-Kendall test of y against x (often time): Kendall, Rank Correlation Methods, 4th edition 1975, sections 4.9
 * and 5.1; U.S. EPA 530/R-09-007 (2009), section 17.3.2. The small-sample chances are exact: with 4 values the
 * smallest one-sided chance is 1/24, so no two-sided verdict at 5 % is possible.
 * Edge cases: fewer than two values and values that are not finite are refused; equal values throughout give 1.
 * @throws RangeError
 */
export function mannKendall(x: Numbers, y: Numbers): TrendTest {
  const score = kendallS(x, y);
  const { s, variance } = score;
  const z = variance > 0 && s !== 0 ? (s - Math.sign(s)) / Math.sqrt(variance) : 0;
  const isExact = !score.hasTies && x.length <= EXACT_UP_TO;
  const risingP = isExact ? exactUpperTail(x.length, s) : normalTail(s, variance);
  const fallingP = isExact ? exactUpperTail(x.length, -s) : normalTail(-s, variance);
  return { ...score, z, tau: s / ((x.length * (x.length - 1)) / 2), risingP, fallingP, isExact };
}

/** S and its variance (Kendall 1975, equation 4.16 of section 4.9). @throws RangeError as above */
export function kendallS(x: Numbers, y: Numbers): KendallScore {
  requireSameLength(x, y, "mannKendall");
  requireCount(x, 2, "mannKendall");
  requireFinite(x, "mannKendall (x)");
  requireFinite(y, "mannKendall (y)");
  let s = 0;
  for (let i = 0; i < x.length; i++) {
    for (let j = i + 1; j < x.length; j++) s += Math.sign(x[j]! - x[i]!) * Math.sign(y[j]! - y[i]!);
  }
  const tiedX = tieSums(x);
  const tiedY = tieSums(y);
  const n = x.length;
  let variance = (n * (n - 1) * (2 * n + 5) - tiedX.weighted - tiedY.weighted) / 18;
  variance += (tiedX.pairs * tiedY.pairs) / (2 * n * (n - 1));
  if (n > 2) variance += (tiedX.triples * tiedY.triples) / (9 * n * (n - 1) * (n - 2));
  return { s, variance, hasTies: tiedX.pairs > 0 || tiedY.pairs > 0 };
}

/**
 * Chance that S >= s over all orders of n different values, counted by adding one value after the other
 * (the new value makes 0 to k - 1 inversions, each as likely).
 */
export function exactUpperTail(n: number, s: number): number {
  const pairs = (n * (n - 1)) / 2;
  const chances = chancesOf(n);
  const mostInversions = Math.floor((pairs - s) / 2);
  let chance = 0;
  for (let i = 0; i <= Math.min(mostInversions, pairs); i++) chance += chances[i]!;
  return Math.min(1, chance);
}

/** Chances of each number of inversions in a random order of n values; worked out once for each n. */
const known: Float64Array[] = [Float64Array.of(1), Float64Array.of(1)];

function chancesOf(n: number): Float64Array {
  for (let k = known.length; k <= n; k++) {
    const before = known[k - 1]!;
    const next = new Float64Array(before.length + k - 1);
    for (let i = 0; i < before.length; i++) {
      for (let added = 0; added < k; added++) next[i + added]! += before[i]! / k;
    }
    known.push(next);
  }
  return known[n]!;
}

function normalTail(s: number, variance: number): number {
  return variance > 0 ? normalCdf(-(s - 1) / Math.sqrt(variance)) : 1;
}

/** Over groups of t equal values: sums of t(t-1)(2t+5), t(t-1) and t(t-1)(t-2). */
function tieSums(values: Numbers): { weighted: number; pairs: number; triples: number } {
  const sizes = new Map<number, number>();
  for (let i = 0; i < values.length; i++) sizes.set(values[i]!, (sizes.get(values[i]!) ?? 0) + 1);
  const sums = { weighted: 0, pairs: 0, triples: 0 };
  for (const t of sizes.values()) {
    sums.weighted += t * (t - 1) * (2 * t + 5);
    sums.pairs += t * (t - 1);
    sums.triples += t * (t - 1) * (t - 2);
  }
  return sums;
}
