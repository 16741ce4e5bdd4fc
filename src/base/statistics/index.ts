export { type HampelResult, hampel } from "./hampel.ts";
export { type LinearFit, leastSquares } from "./leastSquares.ts";
export { type LineFit, linearRegression } from "./linearRegression.ts";
export { exactUpperTail, type KendallScore, kendallS, mannKendall, type TrendTest } from "./mannKendall.ts";
export { mean } from "./mean.ts";
export { median, medianInPlace, SCALE_OF_MAD, scaledMad } from "./median.ts";
export { minimumOf } from "./minimumOf.ts";
export { noncentralTCdf, noncentralTQuantile } from "./noncentralT.ts";
export { normalCdf, normalDensity, normalQuantile } from "./normal.ts";
export {
  oneSidedPredictionFactor,
  oneSidedToleranceFactor,
  pooledSpread,
  type Spread,
} from "./oneSidedBounds.ts";
export type { Numbers } from "./preconditions.ts";
export { type ProjectionFit, projectionFit, type TrialRange } from "./projectionFit.ts";
export { middleOf, quantile, quantileInPlace, selectInPlace } from "./quantile.ts";
export { RandomNumbers } from "./randomNumbers.ts";
export { huberRegression, type RobustFit } from "./robustRegression.ts";
export { rootOf } from "./rootOf.ts";
export { withScratch, withSingleScratch } from "./scratch.ts";
export { type ShiftDirection, type ShiftTest, shiftTest } from "./shiftTest.ts";
export { sampleStandardDeviation } from "./standardDeviation.ts";
export { studentTCdf, studentTQuantile } from "./studentT.ts";
export { type MedianSlope, theilSen } from "./theilSen.ts";
export {
  boundsOf,
  type Correlation,
  correlatedSum,
  effectiveDegreesOfFreedom,
  inQuadrature,
  type Propagated,
  propagate,
  propagatedCovariance,
} from "./uncertainty.ts";
