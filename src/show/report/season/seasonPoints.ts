import type { Quantity } from "../../../base/quantity/index.ts";
import type { SeasonFlight, SeasonPoint } from "../../../season/overview/index.ts";

/** The known values of one quantity, a point a flight. */
export function pointsOf(
  flights: readonly SeasonFlight[],
  pick: (flight: SeasonFlight) => Quantity,
): readonly SeasonPoint[] {
  return flights.flatMap((flight) => {
    const { value, ...more } = pick(flight);
    const { low = null, high = null } = "low" in more ? more : {};
    return value === null ? [] : [pointAt(flight, value, low, high)];
  });
}

export function pointAt(
  { place }: SeasonFlight,
  value: number,
  low: number | null,
  high: number | null,
): SeasonPoint {
  return { fromPlace: place, toPlace: place, value, low, high, flights: 1 };
}
