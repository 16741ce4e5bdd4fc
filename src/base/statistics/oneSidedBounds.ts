import { noncentralTQuantile } from "./noncentralT.ts";
import { normalQuantile } from "./normal.ts";
import { requireWithin } from "./preconditions.ts";
import { studentTQuantile } from "./studentT.ts";

/**
 * One-sided normal tolerance factor k: mean + k s lies above the share `coverage` of the population with
 * probability `confidence`. Exact: the noncentral t quantile with delta = z sqrt(n), over sqrt(n)
 * (NIST/SEMATECH e-Handbook of Statistical Methods, 7.2.6.3). Natrella's approximation is not used: too small
 * from n = 3 on.
 * @param count how many values the mean rests on, 1 or more
 * @param coverage 0.5 to 0.9999
 * @param confidence 0.0001 to 0.9999
 * @param degreesOfFreedom of s; count - 1 unless s is pooled with other evidence
 * @throws RangeError
 */
export function oneSidedToleranceFactor(
  count: number,
  coverage: number,
  confidence: number,
  degreesOfFreedom: number = count - 1,
): number {
  requireWithin(count, 1, 1e6, "a count");
  requireWithin(coverage, 0.5, 0.9999, "coverage");
  const delta = normalQuantile(coverage) * Math.sqrt(count);
  return noncentralTQuantile(confidence, degreesOfFreedom, delta) / Math.sqrt(count);
}

/**
 * One-sided prediction factor: the next value of the population lies below mean + factor times s with
 * `probability`: t sqrt(1 + 1/n) (Hahn and Meeker, Statistical Intervals, 1991, section 4.7).
 * @param count how many values the mean rests on, 1 or more
 * @param degreesOfFreedom of s; count - 1 unless s is pooled with other evidence
 * @throws RangeError
 */
export function oneSidedPredictionFactor(
  count: number,
  probability: number,
  degreesOfFreedom: number = count - 1,
): number {
  requireWithin(count, 1, 1e9, "a count");
  return studentTQuantile(probability, degreesOfFreedom) * Math.sqrt(1 + 1 / count);
}

/** A standard deviation and the degrees of freedom it rests on. */
export interface Spread {
  readonly standardDeviation: number;
  readonly degreesOfFreedom: number;
}

/** Two estimates of one standard deviation, their variances averaged by degrees of freedom. 0 + 0 is refused. */
export function pooledSpread(first: Spread, second: Spread): Spread {
  const degreesOfFreedom = first.degreesOfFreedom + second.degreesOfFreedom;
  requireWithin(degreesOfFreedom, Number.MIN_VALUE, Number.MAX_VALUE, "pooled degrees of freedom");
  const sumOfSquares = [first, second].reduce(
    (sum, one) => (one.degreesOfFreedom > 0 ? sum + one.degreesOfFreedom * one.standardDeviation ** 2 : sum),
    0,
  );
  return { standardDeviation: Math.sqrt(sumOfSquares / degreesOfFreedom), degreesOfFreedom };
}
