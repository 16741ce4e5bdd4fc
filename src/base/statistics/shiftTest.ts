import { mean } from "./mean.ts";
import { type Numbers, requireFinite, requireWithin } from "./preconditions.ts";
import { RandomNumbers } from "./randomNumbers.ts";

/** Fewest values on either side of a split. */
const LEAST_SIDE = 2;
/** Equal statistics of two orders may differ by rounding. */
const ROUNDING = 1e-9;

export type ShiftDirection = "up" | "down";

export interface ShiftTest {
  /** One-sided chance of a shift this large in a random order: (1 + as large) / (1 + permutations). */
  readonly p: number;
  /** How many values stand before the best split. */
  readonly splitAfter: number;
  /** Mean after the split less mean before it. */
  readonly shift: number;
  readonly permutations: number;
}

/**
 * Permutation test for one shift of level: the largest standardised difference of means over all splits with two or
 * more values on each side, against the same in random orders (Good, Permutation, Parametric and Bootstrap Tests
 * of Hypotheses, 3rd edition 2005, chapter 3). The standardisation k (n - k) / n orders the splits just as Student's t
 * does, the total sum of squares being the same in every order.
 * Null with fewer than four values: no split exists. Equal values throughout give p = 1.
 * @param values in time order
 * @param seed the same seed gives the same p
 * @param permutations the smallest p that can come out is 1 / (permutations + 1)
 * @param level null too as soon as p is sure to come out above this: most orders need not be looked at then
 * @throws RangeError for values that are not finite
 */
export function shiftTest(
  values: Numbers,
  direction: ShiftDirection,
  seed: number,
  permutations = 50_000,
  level = 1,
): ShiftTest | null {
  requireFinite(values, "shiftTest");
  requireWithin(permutations, 1, 1e7, "the number of permutations");
  if (values.length < 2 * LEAST_SIDE) return null;
  const centre = mean(values);
  const sign = direction === "up" ? 1 : -1;
  const order = Float64Array.from(values, (value) => sign * (value - centre));
  const observed = largestShift(order);
  const limit = observed.statistic - ROUNDING * Math.abs(observed.statistic);
  const random = new RandomNumbers(seed);
  const shuffled = order.slice();
  let asLarge = 0;
  const chance = () => (1 + asLarge) / (1 + permutations);
  for (let i = 0; i < permutations; i++) {
    random.shuffle(shuffled);
    if (largestShift(shuffled).statistic >= limit) asLarge++;
    if (chance() > level) return null;
  }
  return {
    p: chance(),
    splitAfter: observed.splitAfter,
    shift: sign * observed.shift,
    permutations,
  };
}

/** Over values whose sum is zero: the mean before a split is then -(n - k) / k times the mean after it. */
function largestShift(order: Float64Array): { statistic: number; splitAfter: number; shift: number } {
  const n = order.length;
  let before = 0;
  let statistic = Number.NEGATIVE_INFINITY;
  let splitAfter = LEAST_SIDE;
  let shift = 0;
  for (let k = 1; k <= n - LEAST_SIDE; k++) {
    before += order[k - 1]!;
    if (k < LEAST_SIDE) continue;
    const difference = (-before * n) / (k * (n - k));
    const standardised = difference * Math.sqrt((k * (n - k)) / n);
    if (standardised > statistic) {
      statistic = standardised;
      splitAfter = k;
      shift = difference;
    }
  }
  return { statistic, splitAfter, shift };
}
