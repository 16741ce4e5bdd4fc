import type { Column } from "./column.ts";

const FIRST_HOUR_S = 60;
const LAST_HOUR_S = 24 * 60;

/**
 * True where "10:05", then "10:06" may be hours and minutes as well as minutes and seconds: a row at most for each, no
 * fraction, and none that a day does not have. A stopwatch starts at 0.
 */
export function mayBeHours(column: Column, stepS: number): boolean {
  if (column.twoPartCount < column.clockCount || column.dateCount > 0 || stepS < 1) return false;
  if (/[.,]\d+$/.test(column.firstClock!.text)) return false;
  return column
    .finished()
    .every((value) => Number.isNaN(value) || (value >= FIRST_HOUR_S && value < LAST_HOUR_S));
}

/** Mean seconds between the rows of a clock that starts at 0. */
export function meanStepS(timeS: Float64Array, count: number): number {
  let durationS = 0;
  for (let row = 0; row < timeS.length; row++) if (timeS[row]! > durationS) durationS = timeS[row]!;
  return durationS / Math.max(1, count - 1);
}

/** Rows a second of rows so many seconds apart, as an option. */
export function rateOption(stepS: number): string {
  return `--rate ${Number((1 / stepS).toPrecision(6))}`;
}
