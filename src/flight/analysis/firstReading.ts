import { median } from "../../base/statistics/index.ts";
import type { FlightContext } from "./flightContext.ts";

const FIRST_ROWS_S = 5;

/** Median of a channel over the first seconds of the flight's window; null without a value there. */
export function firstReading({ recording, rows }: FlightContext, values: Float64Array): number | null {
  const found: number[] = [];
  const endS = recording.timeS[rows.firstRow]! + FIRST_ROWS_S;
  for (let row = rows.firstRow; row <= rows.lastRow && recording.timeS[row]! <= endS; row++) {
    if (!Number.isNaN(values[row]!)) found.push(values[row]!);
  }
  return found.length === 0 ? null : median(found);
}
