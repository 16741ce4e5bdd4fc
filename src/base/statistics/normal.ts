import { probit } from "simple-statistics";
import { requireWithin } from "./preconditions.ts";

const LOG_SQRT_TWO_PI = 0.5 * Math.log(2 * Math.PI);
/** Beyond this the continued fraction of the tail is short and keeps relative accuracy. */
const TAIL_FROM = 4;
const TAIL_TERMS = 120;
/** From here on the upper tail is less than half of what a double can take from 1. */
const ONE_FROM = 8.3;
const POLISHING_STEPS = 6;

/** Density of the standard normal distribution. */
export function normalDensity(z: number): number {
  return Math.exp(-0.5 * z * z - LOG_SQRT_TWO_PI);
}

/**
 * Standard normal distribution function P(Z <= z): the series of Marsaglia (Journal of Statistical Software
 * 11, issue 4, 2004) in the middle, Laplace's continued fraction in the tails (NIST DLMF 7.9.1).
 * Absolute error below 1e-15; the lower tail keeps relative accuracy. (simple-statistics has a table for this,
 * good to four decimals.) NaN gives NaN.
 */
export function normalCdf(z: number): number {
  if (Number.isNaN(z)) return Number.NaN;
  if (z < -TAIL_FROM) return upperTail(-z);
  if (z > ONE_FROM) return 1;
  if (z > TAIL_FROM) return 1 - upperTail(z);
  let term = z;
  let sum = z;
  for (let divisor = 3; sum !== sum + term; divisor += 2) {
    term *= (z * z) / divisor;
    sum += term;
  }
  return 0.5 + sum * normalDensity(z);
}

/**
 * Standard normal quantile: the z with P(Z <= z) = probability, polished by Halley's method to full precision
 * from the library's approximation. Edge cases: 0 and 1, which have no finite quantile, and NaN are refused.
 * @throws RangeError
 */
export function normalQuantile(probability: number): number {
  requireWithin(
    probability,
    Number.MIN_VALUE,
    1 - Number.EPSILON / 2,
    "the probability of a normal quantile",
  );
  if (probability > 0.5) return -lowerQuantile(1 - probability);
  return lowerQuantile(probability);
}

function lowerQuantile(probability: number): number {
  let z = probability < 1e-6 ? -Math.sqrt(-2 * Math.log(probability)) : probit(probability);
  for (let step = 0; step < POLISHING_STEPS; step++) {
    const move = (normalCdf(z) - probability) / normalDensity(z);
    z -= move / (1 + (z * move) / 2);
  }
  return z;
}

function upperTail(z: number): number {
  let fraction = z;
  for (let term = TAIL_TERMS; term > 0; term--) fraction = z + term / fraction;
  return normalDensity(z) / fraction;
}
