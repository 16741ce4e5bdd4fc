import {
  inverseOfCrossProduct,
  reduceByReflections,
  solveTriangular,
  type TriangularSystem,
} from "./householder.ts";
import { type Numbers, requireCount, requireFinite, requireSameLength } from "./preconditions.ts";
import { sumOfSquaredDeviations } from "./standardDeviation.ts";

/** The result of a linear fit y = b1 x1 + b2 x2 + ... */
export interface LinearFit {
  /** One per column, in the order given. */
  readonly coefficients: readonly number[];
  /** One standard deviation each; 0 when the rows are no more than the columns. */
  readonly standardErrors: readonly number[];
  /** Of the coefficients, square, symmetric. */
  readonly covariance: readonly (readonly number[])[];
  /** y minus the fitted value, unweighted, one per row. */
  readonly residuals: Float64Array;
  /** Weighted when weights were given. */
  readonly residualSumOfSquares: number;
  readonly residualStandardDeviation: number;
  /** About the mean when a column is constant (an intercept), else about zero; 1 when y does not vary. */
  readonly rSquared: number;
  readonly degreesOfFreedom: number;
}

/**
 * Linear least squares with any number of regressors, by Householder QR with scaled columns: loses far fewer
 * digits than the normal equations (11 digits of the Longley problem remain). An intercept is a column of ones
 * that the caller gives. With weights, w times the squared residual is minimised (w = 1 / variance up to one
 * common factor, 0 leaves a row out) and the residual standard deviation is that of unit weight.
 * Null when the rows are fewer than the columns or a column depends linearly on others: the data do not fix
 * the coefficients. Weights are finite and not negative.
 * @param columns one list per regressor, each as long as y
 * @throws RangeError for lists of unequal length and values that are not finite
 */
export function leastSquares(columns: readonly Numbers[], y: Numbers, weights?: Numbers): LinearFit | null {
  checkInputs(columns, y, weights);
  const used = weights === undefined ? y.length : countPositive(weights);
  if (used < columns.length) return null;
  const system = reduceByReflections(
    columns.map((column) => weighted(column, weights)),
    weighted(y, weights),
  );
  if (system === null) return null;
  return describe(columns, y, weights, system, used);
}

function checkInputs(columns: readonly Numbers[], y: Numbers, weights: Numbers | undefined): void {
  requireCount(columns, 1, "leastSquares (columns)");
  requireFinite(y, "leastSquares (y)");
  columns.forEach((column, j) => {
    requireSameLength(column, y, `leastSquares (column ${j} and y)`);
    requireFinite(column, `leastSquares (column ${j})`);
  });
  if (weights === undefined) return;
  requireSameLength(weights, y, "leastSquares (weights and y)");
  requireFinite(weights, "leastSquares (weights)");
  for (let i = 0; i < weights.length; i++) {
    if (weights[i]! < 0)
      throw new RangeError(`leastSquares needs weights >= 0: weight ${i} is ${weights[i]}`);
  }
}

function describe(
  columns: readonly Numbers[],
  y: Numbers,
  weights: Numbers | undefined,
  system: TriangularSystem,
  used: number,
): LinearFit {
  const coefficients = solveTriangular(system);
  const residuals = residualsOf(columns, y, coefficients);
  const residualSumOfSquares = sumOfSquares(weighted(residuals, weights));
  const degreesOfFreedom = used - columns.length;
  const variance = degreesOfFreedom > 0 ? residualSumOfSquares / degreesOfFreedom : 0;
  const covariance = inverseOfCrossProduct(system).map((row) => row.map((value) => value * variance));
  const total = totalSumOfSquares(columns, y, weights);
  return {
    coefficients,
    standardErrors: covariance.map((row, i) => Math.sqrt(row[i]!)),
    covariance,
    residuals,
    residualSumOfSquares,
    residualStandardDeviation: Math.sqrt(variance),
    rSquared: total > 0 ? 1 - residualSumOfSquares / total : 1,
    degreesOfFreedom,
  };
}

function weighted(values: Numbers, weights: Numbers | undefined): Float64Array {
  const scaled = new Float64Array(values);
  if (weights !== undefined) for (let i = 0; i < scaled.length; i++) scaled[i]! *= Math.sqrt(weights[i]!);
  return scaled;
}

function residualsOf(columns: readonly Numbers[], y: Numbers, coefficients: readonly number[]): Float64Array {
  const residuals = new Float64Array(y);
  columns.forEach((column, j) => {
    const coefficient = coefficients[j]!;
    for (let i = 0; i < residuals.length; i++) residuals[i]! -= coefficient * column[i]!;
  });
  return residuals;
}

function totalSumOfSquares(columns: readonly Numbers[], y: Numbers, weights: Numbers | undefined): number {
  if (!columns.some(isConstant)) return sumOfSquares(weighted(y, weights));
  if (weights === undefined) return sumOfSquaredDeviations(y);
  let sumOfWeights = 0;
  let sum = 0;
  for (let i = 0; i < y.length; i++) {
    sumOfWeights += weights[i]!;
    sum += weights[i]! * y[i]!;
  }
  const centre = sum / sumOfWeights;
  return sumOfSquares(
    weighted(
      Float64Array.from(y, (value) => value - centre),
      weights,
    ),
  );
}

function isConstant(column: Numbers): boolean {
  for (let i = 1; i < column.length; i++) if (column[i] !== column[0]) return false;
  return column.length > 0 && column[0] !== 0;
}

function countPositive(weights: Numbers): number {
  let count = 0;
  for (let i = 0; i < weights.length; i++) if (weights[i]! > 0) count++;
  return count;
}

function sumOfSquares(values: Float64Array): number {
  let sum = 0;
  for (const value of values) sum += value * value;
  return sum;
}
