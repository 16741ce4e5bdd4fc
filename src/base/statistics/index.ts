export { type LinearFit, leastSquares } from "./leastSquares.ts";
export { type LineFit, linearRegression } from "./linearRegression.ts";
export { mean } from "./mean.ts";
export { median, medianInPlace, SCALE_OF_MAD, scaledMad } from "./median.ts";
export { noncentralTCdf, noncentralTQuantile } from "./noncentralT.ts";
export { normalCdf, normalDensity, normalQuantile } from "./normal.ts";
export {
  oneSidedPredictionFactor,
  oneSidedToleranceFactor,
  pooledSpread,
  type Spread,
} from "./oneSidedBounds.ts";
export type { Numbers } from "./preconditions.ts";
export { quantile, quantileInPlace, selectInPlace } from "./quantile.ts";
export { huberRegression, type RobustFit } from "./robustRegression.ts";
export { rootOf } from "./rootOf.ts";
export { sampleStandardDeviation } from "./standardDeviation.ts";
export { studentTCdf, studentTQuantile } from "./studentT.ts";
