import type { SeasonFlight } from "./place.ts";

/** How much was flown. */
export interface SeasonCounts {
  readonly flights: number;
  readonly benchRuns: number;
  readonly firstDay: string | null;
  readonly lastDay: string | null;
  /** Sum of the flight times that are known, s, and of how many flights. */
  readonly flownS: number;
  readonly flightsWithTime: number;
}

export function seasonCounts(flights: readonly SeasonFlight[]): SeasonCounts {
  const days = flights.flatMap(({ day }) => (day === null ? [] : [day])).sort();
  const times = flights.flatMap(({ entry, number }) => {
    const seconds = entry.given.flownS ?? entry.check.measures.flightTimeS.value;
    return number === null || seconds === null ? [] : [seconds];
  });
  const flown = flights.filter(({ number }) => number !== null).length;
  return {
    flights: flown,
    benchRuns: flights.length - flown,
    firstDay: days[0] ?? null,
    lastDay: days.at(-1) ?? null,
    flownS: times.reduce((sum, seconds) => sum + seconds, 0),
    flightsWithTime: times.length,
  };
}
