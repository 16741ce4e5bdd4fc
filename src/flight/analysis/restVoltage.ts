import { median, scaledMad } from "../../base/statistics/index.ts";
import type { Recording } from "../../log/recording/index.ts";
import { channelOrWhy } from "./channelOrWhy.ts";
import type { RowRange } from "./segments.ts";
import { NO_REST_AFTER, NO_REST_BEFORE } from "./sentences.ts";

/** Pack volts at rest with the standard error of their median, or the reason why there are none. */
export type RestVoltage =
  | { readonly packV: number; readonly standardErrorV: number; readonly why: null }
  | { readonly packV: null; readonly why: string };

const REST_S = 5;
const SHORTEST_REST_S = 2;
const FEWEST_ROWS = 3;
/** Rest after the flight must be this long: volts recover for seconds. */
const SHORTEST_REST_AFTER_S = 10;
/** Standard error of a median over that of a mean, for normal scatter. */
const MEDIAN_FACTOR = 1.2533;

/** Median pack volts of the last 5 s before the motor first runs: at least 2 s and 3 rows. */
export function restBefore(recording: Recording, rows: RowRange, firstRunRow: number): RestVoltage {
  const endS = recording.timeS[firstRunRow]!;
  const range = { firstRow: rows.firstRow, lastRow: firstRunRow - 1 };
  return restOver(recording, range, endS - REST_S - 1e-6, NO_REST_BEFORE);
}

/** Median pack volts of the last 5 s of the window, at least 10 s after the motor last ran. */
export function restAfter(recording: Recording, rows: RowRange, lastRunRow: number): RestVoltage {
  const endS = recording.timeS[rows.lastRow]!;
  if (endS - recording.timeS[lastRunRow]! < SHORTEST_REST_AFTER_S) return { packV: null, why: NO_REST_AFTER };
  const range = { firstRow: lastRunRow + 1, lastRow: rows.lastRow };
  return restOver(recording, range, endS - REST_S - 1e-6, NO_REST_AFTER);
}

function restOver(recording: Recording, range: RowRange, fromS: number, why: string): RestVoltage {
  const volts = channelOrWhy(recording, "packVoltage");
  if (volts.values === null) return { packV: null, why: volts.why };
  const rest = medianOver(recording, range, fromS, volts.values);
  return rest === null
    ? { packV: null, why }
    : { packV: rest.median, standardErrorV: rest.standardError, why: null };
}

interface RestMedian {
  readonly median: number;
  readonly standardError: number;
}

/** Any channel's median over the same rest before the first run; null without one. */
export function medianBefore(
  recording: Recording,
  rows: RowRange,
  firstRunRow: number,
  values: Float64Array,
): RestMedian | null {
  const range = { firstRow: rows.firstRow, lastRow: firstRunRow - 1 };
  return medianOver(recording, range, recording.timeS[firstRunRow]! - REST_S - 1e-6, values);
}

function medianOver(
  recording: Recording,
  range: RowRange,
  fromS: number,
  values: Float64Array,
): RestMedian | null {
  const found: number[] = [];
  let firstS = Number.NaN;
  let lastS = Number.NaN;
  for (let row = range.lastRow; row >= range.firstRow && recording.timeS[row]! >= fromS; row--) {
    if (Number.isNaN(values[row]!)) continue;
    found.push(values[row]!);
    firstS = recording.timeS[row]!;
    if (Number.isNaN(lastS)) lastS = firstS;
  }
  const isLong = found.length >= FEWEST_ROWS && lastS - firstS >= SHORTEST_REST_S - recording.stepS / 2;
  if (!isLong) return null;
  const middle = median(found);
  return {
    median: middle,
    standardError: (MEDIAN_FACTOR * scaledMad(found, middle)) / Math.sqrt(found.length),
  };
}
