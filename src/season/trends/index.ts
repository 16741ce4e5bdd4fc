export { seriesTitle, trendMeasureWords } from "./sentences.ts";
export type {
  TrendCrossing,
  TrendMeasure,
  TrendOf,
  TrendPoint,
  TrendResult,
  TrendSeries,
  TrendVerdict,
} from "./trend.ts";
export type { TrendFlight } from "./trendFlight.ts";
export { trendsOf } from "./trendsOf.ts";
export { type Alarm, FEWEST_POINTS, type WatchedDirection, watchSeries } from "./watch.ts";
