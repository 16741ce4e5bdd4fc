export { type Alarm, FEWEST_POINTS, type WatchedDirection, watchSeries } from "./watch.ts";
