import { requireWithin } from "./preconditions.ts";

const GOLDEN = (Math.sqrt(5) - 1) / 2;
const MOST_STEPS = 300;

/**
 * Where a function with one minimum between `low` and `high` is smallest: golden-section search (Kiefer, Proceedings
 * of the American Mathematical Society 4, 1953). An end can be the answer. The place is good to about the square root of
 * rounding, 1e-8 relative, since the function is flat there.
 * @param tolerance width of the last bracket
 * @throws RangeError for a bracket that is not ascending or a function value of NaN
 */
export function minimumOf(
  f: (x: number) => number,
  low: number,
  high: number,
  tolerance = 1e-9 * (Math.abs(low) + Math.abs(high)),
): { readonly at: number; readonly value: number } {
  requireWithin(low, -Number.MAX_VALUE, high, "the low end of a bracket");
  const numberAt = (x: number) => {
    const value = f(x);
    if (Number.isNaN(value)) throw new RangeError(`a function to minimise must be a number: got NaN at ${x}`);
    return value;
  };
  let [a, b] = [low, high];
  let c = b - GOLDEN * (b - a);
  let d = a + GOLDEN * (b - a);
  let fc = numberAt(c);
  let fd = numberAt(d);
  for (let step = 0; step < MOST_STEPS && b - a > tolerance; step++) {
    if (fc <= fd) {
      [b, d, fd] = [d, c, fc];
      c = b - GOLDEN * (b - a);
      fc = numberAt(c);
    } else {
      [a, c, fc] = [c, d, fd];
      d = a + GOLDEN * (b - a);
      fd = numberAt(d);
    }
  }
  const candidates = [a, c, d, b].map((at) => ({ at, value: numberAt(at) }));
  return candidates.reduce((best, one) => (one.value < best.value ? one : best));
}
