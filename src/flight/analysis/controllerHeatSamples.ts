import type { Recording } from "../../log/recording/index.ts";
import { bareDriverAt, type HeatDriverRows, type HeatDrivers } from "./controllerHeatDrivers.ts";
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
  /** The same without their factors. */
  readonly bareDrivers: readonly Float64Array[];
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
  drivers: HeatDrivers,
): HeatSamples {
  const { timeS } = recording;
  const firstS = timeS[range.firstRow]!;
  const spanS = timeS[range.lastRow]! - firstS;
  const stepS = Math.max(STEP_S, spanS / MOST_SPANS);
  const count = Math.max(1, Math.floor(spanS / stepS));
  const spans = { firstS, stepS, count };
  const means = drivers.map((driver) =>
    driverMeans(timeS, range, { ...spans, firstS: firstS + driver.delayS }, driver),
  );
  return {
    stepS,
    startS: firstS + stepS / 2,
    temperatureC: spanMeans(timeS, range, spans, temperatureC),
    drivers: means.map(({ whole }) => whole),
    bareDrivers: means.map(({ bare }) => bare),
  };
}

interface Spans {
  readonly firstS: number;
  readonly stepS: number;
  readonly count: number;
}

function spanMeans(
  timeS: Float64Array,
  { firstRow, lastRow }: RowRange,
  { firstS, stepS, count }: Spans,
  values: Float64Array,
): Float64Array {
  const sums = new Float64Array(count);
  const counts = new Float64Array(count);
  for (let row = firstRow; row <= lastRow; row++) {
    const value = values[row]!;
    if (!Number.isFinite(value)) continue;
    const span = Math.floor((timeS[row]! - firstS) / stepS);
    if (span < 0 || span >= count) continue;
    sums[span]! += value;
    counts[span]! += 1;
  }
  return quotients(sums, counts);
}

/** The same of a driver with and without its factor, holes filled. */
function driverMeans(
  timeS: Float64Array,
  { firstRow, lastRow }: RowRange,
  { firstS, stepS, count }: Spans,
  driver: HeatDriverRows,
): { readonly whole: Float64Array; readonly bare: Float64Array } {
  const { factor } = driver;
  const sums = new Float64Array(count);
  const bareSums = new Float64Array(count);
  const counts = new Float64Array(count);
  for (let row = firstRow; row <= lastRow; row++) {
    const value = bareDriverAt(driver, row);
    if (!Number.isFinite(factor * value)) continue;
    const span = Math.floor((timeS[row]! - firstS) / stepS);
    if (span < 0 || span >= count) continue;
    sums[span]! += factor * value;
    bareSums[span]! += value;
    counts[span]! += 1;
  }
  const means = { whole: quotients(sums, counts), bare: quotients(bareSums, counts) };
  fillHoles(means.whole);
  fillHoles(means.bare);
  return means;
}

function quotients(sums: Float64Array, counts: Float64Array): Float64Array {
  for (let span = 0; span < sums.length; span++) sums[span]! /= counts[span]!;
  return sums;
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
