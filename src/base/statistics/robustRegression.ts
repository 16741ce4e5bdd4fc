import { type LinearFit, leastSquares } from "./leastSquares.ts";
import { scaledMad } from "./median.ts";
import type { Numbers } from "./preconditions.ts";

/** Residuals up to this many robust standard deviations keep full weight. */
const TUNING = 1.5;
const MOST_ROUNDS = 60;
const SMALLEST_CHANGE = 1e-8;
/** A scale below this share of the spread of y means that the line goes through the points. */
const EXACT_FIT = 1e-12;

export interface RobustFit extends LinearFit {
  /** 0 to 1, one per row: 1 within 1.5 scales, below that what the row counted for. */
  readonly weights: Float64Array;
  /** Robust standard deviation of the residuals. */
  readonly scale: number;
  readonly rounds: number;
  readonly converged: boolean;
}

/**
 * Huber's M-estimate of a linear fit, tuning 1.5, by iteratively reweighted least squares; the scale is the
 * scaled median absolute residual of each round (Huber, Robust Statistics, 1981, sections 7.7 and 7.8).
 * Outliers in y lose weight; outliers in a regressor do not. The standard errors are those of the last
 * weighted fit: a guide only, too small for correlated rows (use blocks there).
 * Edge cases: null as `leastSquares` is; points that lie on the line end the rounds at once.
 * @throws RangeError as `leastSquares` does
 */
export function huberRegression(columns: readonly Numbers[], y: Numbers): RobustFit | null {
  let fit = leastSquares(columns, y);
  if (fit === null) return null;
  let weights = new Float64Array(y.length).fill(1);
  const floor = EXACT_FIT * largestSize(y);
  let scale = scaledMad(fit.residuals, 0);
  for (let round = 1; round <= MOST_ROUNDS; round++) {
    if (!(scale > floor)) return { ...fit, weights, scale, rounds: round - 1, converged: true };
    weights = huberWeights(fit.residuals, scale);
    const next = leastSquares(columns, y, weights);
    if (next === null) return null;
    const converged = largestMove(fit.residuals, next.residuals) < SMALLEST_CHANGE * scale;
    fit = next;
    scale = scaledMad(fit.residuals, 0);
    if (converged) return { ...fit, weights, scale, rounds: round, converged };
  }
  return { ...fit, weights, scale, rounds: MOST_ROUNDS, converged: false };
}

function huberWeights(residuals: Float64Array, scale: number): Float64Array<ArrayBuffer> {
  const limit = TUNING * scale;
  const weights = new Float64Array(residuals.length);
  for (let i = 0; i < weights.length; i++) {
    const size = Math.abs(residuals[i]!);
    weights[i] = size <= limit ? 1 : limit / size;
  }
  return weights;
}

function largestMove(before: Float64Array, after: Float64Array): number {
  let largest = 0;
  for (let i = 0; i < after.length; i++) largest = Math.max(largest, Math.abs(after[i]! - before[i]!));
  return largest;
}

function largestSize(values: Numbers): number {
  let largest = 0;
  for (let i = 0; i < values.length; i++) largest = Math.max(largest, Math.abs(values[i]!));
  return largest;
}
