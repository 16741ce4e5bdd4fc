import type { RowRange } from "./segments.ts";
import { type Integrand, ROWS_AT_ONCE } from "./trapezoid.ts";

/**
 * Variance of a sum from a current sensor that moves in steps: while it shows one value the true current may lie
 * anywhere within half a step of it, so each such stretch carries (step x its seconds)^2 / 12 (the variance of
 * a rectangle, JCGM 100:2008, 4.3.7); with `volts`, times the volts.
 * @param stepA smallest step of the current, amperes
 */
export function resolutionVariance(
  integrand: Integrand,
  range: RowRange & { readonly startS?: number; readonly endS?: number },
  limitS: number,
  stepA: number,
): number {
  const running = Float64Array.of(0, 0, -1);
  for (let row = range.firstRow; row <= range.lastRow; row += ROWS_AT_ONCE) {
    const lastRow = Math.min(range.lastRow, row + ROWS_AT_ONCE - 1);
    addRows(integrand, { ...range, firstRow: row, lastRow }, limitS, running);
  }
  const [sumOfSquares = 0, weight = 0] = running;
  return ((sumOfSquares + weight * weight) * stepA * stepA) / 12;
}

/** @param running sum of squares, weight of the stretch under way, row with a value before */
function addRows(
  { timeS, amps, volts }: Integrand,
  range: RowRange & { readonly startS?: number; readonly endS?: number },
  limitS: number,
  running: Float64Array,
): void {
  const { startS = Number.NEGATIVE_INFINITY, endS = Number.POSITIVE_INFINITY } = range;
  let sumOfSquares = running[0]!;
  let weight = running[1]!;
  let before = Math.trunc(running[2]!);
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
  running[0] = sumOfSquares;
  running[1] = weight;
  running[2] = before;
}
