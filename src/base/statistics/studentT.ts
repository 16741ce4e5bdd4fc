import { incompleteBeta } from "./incompleteBeta.ts";
import { requireWithin } from "./preconditions.ts";
import { rootOf } from "./rootOf.ts";

/**
 * Student's t distribution function with `degreesOfFreedom` > 0 (need not be whole), by the incomplete beta
 * function (NIST DLMF 8.17; Abramowitz and Stegun 26.7.1). Both tails keep relative accuracy below 0.
 * @throws RangeError for degreesOfFreedom that are not positive
 */
export function studentTCdf(t: number, degreesOfFreedom: number): number {
  requireWithin(degreesOfFreedom, Number.MIN_VALUE, Number.MAX_VALUE, "degrees of freedom");
  if (Number.isNaN(t)) return Number.NaN;
  const tail = lowerTail(Math.abs(t), degreesOfFreedom);
  return t < 0 ? tail : 1 - tail;
}

/**
 * Quantile of Student's t: the t with P(T <= t) = probability. Edge cases: probability 0, 1 and NaN are refused.
 * @param probability between 0 and 1, ends left out
 * @throws RangeError
 */
export function studentTQuantile(probability: number, degreesOfFreedom: number): number {
  requireWithin(probability, 1e-300, 1 - Number.EPSILON / 2, "the probability of a t quantile");
  if (probability === 0.5) return 0;
  const tailShare = Math.min(probability, 1 - probability);
  let high = 1;
  while (studentTCdf(-high, degreesOfFreedom) > tailShare) high *= 2;
  const low = high > 1 ? high / 2 : 0;
  const size = rootOf((t) => Math.log(studentTCdf(-t, degreesOfFreedom) / tailShare), low, high, 1e-14);
  if (size === null) throw new RangeError(`no t quantile for probability ${probability}`);
  return probability < 0.5 ? -size : size;
}

/** P(T <= -t) for t >= 0. */
function lowerTail(t: number, degreesOfFreedom: number): number {
  const square = t * t;
  if (square < degreesOfFreedom) {
    const inside = incompleteBeta(square / (degreesOfFreedom + square), 0.5, degreesOfFreedom / 2);
    return 0.5 * (1 - inside);
  }
  return 0.5 * incompleteBeta(degreesOfFreedom / (degreesOfFreedom + square), degreesOfFreedom / 2, 0.5);
}
