import type { Quantity } from "../../base/quantity/index.ts";
import type { LogbookEntry } from "../logbook/index.ts";
import type { TrendMeasure, TrendOf, TrendPoint } from "./trend.ts";
import type { WatchedDirection } from "./watch.ts";

/** One measure over the flights of one fitting before it is judged. */
export interface RawSeries {
  readonly measure: TrendMeasure;
  readonly unit: string;
  readonly of: TrendOf;
  readonly direction: WatchedDirection;
  readonly points: readonly TrendPoint[];
  /** Place of each point: flight of the series, or charge of the pack. */
  readonly x: readonly number[];
  /**
   * Readings of the same points under different assumptions (the pack's temperature); a change counts only if
   * each of them shows it.
   */
  readonly variants: readonly (readonly number[])[];
  /** Why nothing can be said, however many points there are; null otherwise. */
  readonly notJudged: string | null;
  /** The flights behind the points. */
  readonly entries: readonly LogbookEntry[];
  /** Each flight's own time constant, s, where the series is the controller's and its speed is logged. */
  readonly timeConstantsS?: readonly number[];
}

/** A series of a measure as the flights' own results give it. */
export function plainSeries<Flight extends LogbookEntry>(
  raw: Pick<RawSeries, "measure" | "unit" | "of" | "direction">,
  flights: readonly Flight[],
  pick: (entry: Flight) => Quantity,
): Omit<RawSeries, "entries"> & { readonly entries: readonly Flight[] } {
  const entries = flights.filter((entry) => pick(entry).value !== null);
  const points = entries.map((entry) => pointOf(entry, pick(entry)));
  return {
    ...raw,
    entries,
    points,
    x: points.map((_, index) => index),
    variants: [points.map(({ value }) => value)],
    notJudged: null,
  };
}

export function pointOf({ flight }: LogbookEntry, quantity: Quantity): TrendPoint {
  const { value } = quantity;
  if (value === null) throw new RangeError(`flight ${flight} gives no value for its point`);
  return { flight, value, low: quantity.low, high: quantity.high };
}
