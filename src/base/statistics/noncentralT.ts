import { integrate } from "./integrate.ts";
import { logGamma } from "./logGamma.ts";
import { normalCdf, normalQuantile } from "./normal.ts";
import { requireWithin } from "./preconditions.ts";
import { rootOf } from "./rootOf.ts";

/** How many standard deviations of either factor of the integrand are followed; 9 leaves 1e-18. */
const REACH = 9;
/** Parts of each stretch between the turns of the normal factor: fewer where there are many stretches. */
const [FEW_PANELS, MANY_PANELS] = [2, 4];
/** First half-width of the bracket of a quantile, in standard deviations. */
const FIRST_STEP = 0.1;

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
  const [from, to] = factorAbove0(t, delta, low, high);
  if (from >= to) return 0;
  const breaks = [from, ...turnAt(t, delta).filter((s) => s > from && s < to), to];
  const share = integrate(
    (s) => density(s) * normalCdf(t * s - delta),
    breaks,
    breaks.length > 3 ? FEW_PANELS : MANY_PANELS,
  );
  return Math.min(1, Math.max(0, share));
}

/** The stretch between `low` and `high` in which the normal factor is more than 1e-18. */
function factorAbove0(t: number, delta: number, low: number, high: number): readonly [number, number] {
  const edge = (delta - REACH) / t;
  if (t > 0) return [Math.max(low, edge), high];
  if (t < 0) return [low, Math.min(high, edge)];
  return delta < REACH ? [low, high] : [high, high];
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
  // About where a normal distribution with the noncentral t's large-sample spread has it.
  const spread = Math.sqrt(1 + (delta * delta) / (2 * degreesOfFreedom));
  const near = delta + normalQuantile(probability) * spread;
  let above = FIRST_STEP * spread;
  while (excess(near + above) < 0) above *= 2;
  let below = FIRST_STEP * spread;
  while (excess(near - below) > 0) below *= 2;
  const t = rootOf(excess, near - below, near + above);
  if (t === null) throw new RangeError(`no noncentral t quantile for probability ${probability}`);
  return t;
}
