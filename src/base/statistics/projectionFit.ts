import { type LinearFit, leastSquares } from "./leastSquares.ts";
import { minimumOf } from "./minimumOf.ts";
import { type Numbers, requireWithin } from "./preconditions.ts";

export interface ProjectionFit {
  /** The one parameter that enters non-linearly. */
  readonly parameter: number;
  readonly linear: LinearFit;
  /** Trial parameters, ascending, and the (weighted) residual sum of squares at each; Infinity where unfixed. */
  readonly grid: readonly { readonly parameter: number; readonly residualSumOfSquares: number }[];
  /** The best trial lies at an end of the range: the data do not bound the parameter there. */
  readonly isAtEnd: boolean;
}

export interface TrialRange {
  /** Least and largest trial value, both more than 0. */
  readonly low: number;
  readonly high: number;
  /** Grid steps between them, 2 or more, each the same ratio; the valley must be wider than two of them. */
  readonly steps: number;
  /** Relative width at which the search for the floor stops; 1e-10 unless given. */
  readonly tolerance?: number;
}

/**
 * Least squares with one non-linear parameter by variable projection (Golub and Pereyra, SIAM Journal on Numerical
 * Analysis 10, 1973, 413): for each trial value the linear part is solved exactly; a logarithmic grid finds the
 * valley, golden section its floor. Needs no starting value.
 * Null when no trial fixes the linear coefficients.
 * @param columnsAt the regressors at a trial value, each as long as y
 * @throws RangeError as `leastSquares` does
 */
export function projectionFit(
  columnsAt: (parameter: number) => readonly Numbers[],
  y: Numbers,
  range: TrialRange,
  weights?: Numbers,
): ProjectionFit | null {
  requireWithin(range.low, Number.MIN_VALUE, range.high, "the low end of a trial range");
  requireWithin(range.steps, 2, 10_000, "the number of grid steps");
  const sumAt = (parameter: number) =>
    leastSquares(columnsAt(parameter), y, weights)?.residualSumOfSquares ?? Number.POSITIVE_INFINITY;
  const ratio = Math.log(range.high / range.low) / range.steps;
  const grid = Array.from({ length: range.steps + 1 }, (_, i) => {
    const parameter = range.low * Math.exp(ratio * i);
    return { parameter, residualSumOfSquares: sumAt(parameter) };
  });
  let best = 0;
  grid.forEach((one, i) => {
    if (one.residualSumOfSquares < grid[best]!.residualSumOfSquares) best = i;
  });
  if (!Number.isFinite(grid[best]!.residualSumOfSquares)) return null;
  const left = grid[Math.max(0, best - 1)]!.parameter;
  const right = grid[Math.min(range.steps, best + 1)]!.parameter;
  const floor = minimumOf(
    (log) => sumAt(Math.exp(log)),
    Math.log(left),
    Math.log(right),
    range.tolerance ?? 1e-10,
  );
  const parameter = Math.exp(floor.at);
  const linear = leastSquares(columnsAt(parameter), y, weights);
  if (linear === null) return null;
  return { parameter, linear, grid, isAtEnd: best === 0 || best === range.steps };
}
