import type { Recording } from "../../log/recording/index.ts";
import type { RowRange } from "./segments.ts";

/** Temperature and what may drive it, averaged over equal spans of time. */
export interface HeatSamples {
  readonly stepS: number;
  /** Middle of the first span, seconds since the first row. */
  readonly startS: number;
  /** degC; NaN where no reading is. */
  readonly temperatureC: Float64Array;
  /** Ampere squared, one array per driver, holes filled in a straight line. */
  readonly drivers: readonly Float64Array[];
}

const STEP_S = 1;
/** Longer logs are averaged over longer spans, so that the cost stays bounded. */
const MOST_SPANS = 3600;

/**
 * Means over spans of one second (or more in a very long log) of the temperature and of each driver by row.
 * A driver that the log tells late is taken from later rows.
 */
export function heatSamples(
  recording: Recording,
  range: RowRange,
  temperatureC: Float64Array,
  driverOf: readonly { readonly ofRow: (row: number) => number; readonly delayS: number }[],
): HeatSamples {
  const { timeS } = recording;
  const firstS = timeS[range.firstRow]!;
  const spanS = timeS[range.lastRow]! - firstS;
  const stepS = Math.max(STEP_S, spanS / MOST_SPANS);
  const count = Math.max(1, Math.floor(spanS / stepS));
  const spans = { firstS, stepS, count };
  const temperatures = spanMeans(timeS, range, spans, (row) => temperatureC[row]!);
  const drivers = driverOf.map(({ ofRow, delayS }) =>
    spanMeans(timeS, range, { ...spans, firstS: firstS + delayS }, ofRow),
  );
  for (const driver of drivers) fillHoles(driver);
  return { stepS, startS: firstS + stepS / 2, temperatureC: temperatures, drivers };
}

function spanMeans(
  timeS: Float64Array,
  range: RowRange,
  spans: { readonly firstS: number; readonly stepS: number; readonly count: number },
  ofRow: (row: number) => number,
): Float64Array {
  const sums = new Float64Array(spans.count);
  const counts = new Float64Array(spans.count);
  for (let row = range.firstRow; row <= range.lastRow; row++) {
    const value = ofRow(row);
    if (!Number.isFinite(value)) continue;
    const span = Math.floor((timeS[row]! - spans.firstS) / spans.stepS);
    if (span < 0 || span >= spans.count) continue;
    sums[span]! += value;
    counts[span]! += 1;
  }
  return sums.map((sum, k) => sum / counts[k]!);
}

/** NaN becomes the straight line between its neighbours, or the nearest value at the ends (0 if there is none). */
function fillHoles(values: Float64Array): void {
  let before = -1;
  for (let k = 0; k <= values.length; k++) {
    if (k < values.length && Number.isNaN(values[k]!)) continue;
    const low = before >= 0 ? values[before]! : (values[k] ?? 0);
    const high = k < values.length ? values[k]! : low;
    for (let hole = before + 1; hole < k; hole++) {
      values[hole] = low + ((high - low) * (hole - before)) / (k - before);
    }
    before = k;
  }
}
