import { linearRegression as fitLine } from "simple-statistics";
import { mean } from "./mean.ts";
import { type Numbers, requireCount, requireSameLength } from "./preconditions.ts";
import { sumOfSquaredDeviations } from "./standardDeviation.ts";

/** A straight line y = intercept + slope x, and how well the points fix it. */
export interface LineFit {
  readonly slope: number;
  readonly intercept: number;
  /** One standard deviation; NaN-free: 0 with two points, which say nothing about scatter. */
  readonly slopeStandardError: number;
  readonly interceptStandardError: number;
  /** Square root of the residual sum of squares over n - 2. */
  readonly residualStandardDeviation: number;
  readonly residualSumOfSquares: number;
  /** Share of the variation of y explained, 0 to 1; 1 when y does not vary. */
  readonly rSquared: number;
  readonly degreesOfFreedom: number;
  readonly meanX: number;
  readonly meanY: number;
}

/**
 * Ordinary least squares through points (x, y). Both are centred first, so abscissae such as epoch
 * milliseconds lose no digits; predict with meanY + slope (x - meanX) there, not with the far intercept.
 * Edge cases: fewer than two points, points that all share one x, and values that are not finite are refused.
 * @throws RangeError
 */
export function linearRegression(x: Numbers, y: Numbers): LineFit {
  requireSameLength(x, y, "linearRegression");
  requireCount(x, 2, "linearRegression");
  const meanX = mean(x);
  const meanY = mean(y);
  const points = Array.from(x, (value, i) => [value - meanX, y[i]! - meanY]);
  const sumXX = sumOfSquaredDeviations(x);
  if (sumXX === 0) {
    throw new RangeError(`linearRegression needs at least two different x: all ${x.length} are ${x[0]}`);
  }
  const line = fitLine(points);
  let residualSumOfSquares = 0;
  for (const [dx, dy] of points) residualSumOfSquares += (dy! - line.b - line.m * dx!) ** 2;
  const degreesOfFreedom = x.length - 2;
  const residualStandardDeviation =
    degreesOfFreedom > 0 ? Math.sqrt(residualSumOfSquares / degreesOfFreedom) : 0;
  const total = sumOfSquaredDeviations(y);
  return {
    slope: line.m,
    intercept: meanY + line.b - line.m * meanX,
    slopeStandardError: residualStandardDeviation / Math.sqrt(sumXX),
    interceptStandardError: residualStandardDeviation * Math.sqrt(1 / x.length + meanX ** 2 / sumXX),
    residualStandardDeviation,
    residualSumOfSquares,
    rSquared: total > 0 ? 1 - residualSumOfSquares / total : 1,
    degreesOfFreedom,
    meanX,
    meanY,
  };
}
