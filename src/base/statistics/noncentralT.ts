import { integrate } from "./integrate.ts";
import { logGamma } from "./logGamma.ts";
import { normalCdf } from "./normal.ts";
import { requireWithin } from "./preconditions.ts";
import { rootOf } from "./rootOf.ts";

/** How many standard deviations of either factor of the integrand are followed; 9 leaves 1e-18. */
const REACH = 9;
const PANELS = 4;

/**
 * Noncentral t distribution function: P((Z + delta) / S <= t), Z standard normal, S the root of chi-square over
 * its degrees of freedom. Integrated over S (Johnson, Kotz and Balakrishnan, Continuous Univariate Distributions,
 * volume 2, 1995, section 31.2), absolute error about 1e-12.
 * @param degreesOfFreedom 1 or more; accurate when whole or above 2
 * @throws RangeError for values that are not finite
 */
export function noncentralTCdf(t: number, degreesOfFreedom: number, delta: number): number {
  requireWithin(degreesOfFreedom, 1, 1e7, "degrees of freedom");
  requireWithin(t, -1e12, 1e12, "noncentral t: t");
  requireWithin(delta, -1e6, 1e6, "noncentral t: delta");
  const nu = degreesOfFreedom;
  const mode = Math.sqrt((nu - 1) / nu);
  const low = Math.max(0, mode - REACH / Math.sqrt(nu));
  const high = mode + REACH / Math.sqrt(nu);
  const logScale = Math.log(2) + (nu / 2) * Math.log(nu / 2) - logGamma(nu / 2);
  const density = (s: number) => Math.exp(logScale + (nu - 1) * Math.log(s) - (nu * s * s) / 2);
  const breaks = [low, ...turnAt(t, delta).filter((s) => s > low && s < high), high];
  const share = integrate((s) => density(s) * normalCdf(t * s - delta), breaks, PANELS);
  return Math.min(1, Math.max(0, share));
}

/** Where the normal factor turns from 0 to 1, in ascending order: narrow when t is large. */
function turnAt(t: number, delta: number): number[] {
  if (t === 0) return [];
  return [-REACH, 0, REACH].map((z) => (delta + z) / t).sort((a, b) => a - b);
}

/**
 * Quantile of the noncentral t distribution, by a bracketed root of the above.
 * @param probability 0.0001 to 0.9999
 * @throws RangeError
 */
export function noncentralTQuantile(probability: number, degreesOfFreedom: number, delta: number): number {
  requireWithin(probability, 1e-4, 1 - 1e-4, "the probability of a noncentral t quantile");
  const excess = (t: number) => noncentralTCdf(t, degreesOfFreedom, delta) - probability;
  let width = 1;
  while (excess(delta + width) < 0) width *= 2;
  let below = 1;
  while (excess(delta - below) > 0) below *= 2;
  const t = rootOf(excess, delta - below, delta + width);
  if (t === null) throw new RangeError(`no noncentral t quantile for probability ${probability}`);
  return t;
}
