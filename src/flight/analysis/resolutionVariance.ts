import type { RowRange } from "./segments.ts";
import type { Integrand } from "./trapezoid.ts";

/**
 * Variance of a sum from a current sensor that moves in steps: while it shows one value the true current may lie
 * anywhere within half a step of it, so each such stretch carries (step x its seconds)^2 / 12 (the variance of
 * a rectangle, JCGM 100:2008, 4.3.7); with `volts`, times the volts.
 * @param stepA smallest step of the current, amperes
 */
export function resolutionVariance(
  { timeS, amps, volts }: Integrand,
  range: RowRange & { readonly startS?: number; readonly endS?: number },
  limitS: number,
  stepA: number,
): number {
  const { startS = Number.NEGATIVE_INFINITY, endS = Number.POSITIVE_INFINITY } = range;
  let sumOfSquares = 0;
  let weight = 0;
  let before = -1;
  for (let row = range.firstRow; row <= range.lastRow; row++) {
    if (Number.isNaN(amps[row]!) || timeS[row]! < startS || timeS[row]! > endS) continue;
    const stepS = before < 0 ? 0 : timeS[row]! - timeS[before]!;
    if (stepS <= limitS && before >= 0) weight += volts === null ? stepS : stepS * (volts[before]! || 0);
    if (before >= 0 && amps[row] !== amps[before]) {
      sumOfSquares += weight * weight;
      weight = 0;
    }
    before = row;
  }
  return ((sumOfSquares + weight * weight) * stepA * stepA) / 12;
}
