const MOST_STEPS = 200;

/**
 * The root of a continuous function between `low` and `high`, where it changes sign: Brent's method
 * (Algorithms for Minimization without Derivatives, 1973, chapter 4): inverse quadratic or secant steps,
 * bisection whenever they do not shrink the bracket.
 * Null when the function has the same sign at both ends or is NaN there.
 * @param tolerance absolute width at which to stop; rounding limits it from below
 */
export function rootOf(
  f: (x: number) => number,
  low: number,
  high: number,
  tolerance = 1e-12 * (Math.abs(low) + Math.abs(high)),
): number | null {
  let a = low;
  let b = high;
  let fa = f(a);
  let fb = f(b);
  if (fa === 0) return a;
  if (fb === 0) return b;
  if (!(fa * fb < 0)) return null;
  let c = a;
  let fc = fa;
  let step = b - a;
  let stepBefore = step;
  for (let count = 0; count < MOST_STEPS; count++) {
    if (fb * fc > 0) {
      c = a;
      fc = fa;
      step = stepBefore = b - a;
    }
    if (Math.abs(fc) < Math.abs(fb)) [a, b, c, fa, fb, fc] = [b, c, b, fb, fc, fb];
    const least = 2 * Number.EPSILON * Math.abs(b) + tolerance / 2;
    const half = (c - b) / 2;
    if (Math.abs(half) <= least || fb === 0) return b;
    const trial = interpolatedStep(a, b, c, fa, fb, fc);
    const useTrial =
      Math.abs(stepBefore) >= least &&
      Math.abs(fa) > Math.abs(fb) &&
      trial * half > 0 &&
      2 * Math.abs(trial) < Math.min(3 * Math.abs(half) - least, Math.abs(stepBefore));
    stepBefore = useTrial ? step : half;
    step = useTrial ? trial : half;
    a = b;
    fa = fb;
    b += Math.abs(step) > least ? step : Math.sign(half) * least;
    fb = f(b);
    if (Number.isNaN(fb)) return null;
  }
  return b;
}

/** Where inverse interpolation through the last points (secant when only two differ) puts the root, less b. */
function interpolatedStep(a: number, b: number, c: number, fa: number, fb: number, fc: number): number {
  if (a === c) return (-fb * (b - a)) / (fb - fa);
  const aOverC = fa / fc;
  const bOverC = fb / fc;
  const bOverA = fb / fa;
  const numerator = bOverA * ((c - b) * aOverC * (aOverC - bOverC) - (b - a) * (bOverC - 1));
  const denominator = (aOverC - 1) * (bOverC - 1) * (bOverA - 1);
  return -numerator / denominator;
}
