import type { TimerSetting } from "../timer/index.ts";
import type { SeasonFlight } from "./place.ts";

/** Flights left out of the timer for one reason. */
export interface LeftOutGroup {
  readonly why: string;
  readonly flights: readonly SeasonFlight[];
}

export interface TimerFlights {
  readonly counted: readonly SeasonFlight[];
  readonly leftOut: readonly LeftOutGroup[];
}

/** Which flights the timer rests on, and the others by their reason, the commonest first. */
export function timerFlights(flights: readonly SeasonFlight[], timer: TimerSetting): TimerFlights {
  const reasons = new Map(timer.leftOut.map(({ flight, why }) => [flight, why]));
  const groups = new Map<string, SeasonFlight[]>();
  const counted: SeasonFlight[] = [];
  for (const flight of flights) {
    const why = reasons.get(flight.entry.flight);
    if (why === undefined) counted.push(flight);
    else groups.set(why, [...(groups.get(why) ?? []), flight]);
  }
  const leftOut = [...groups].map(([why, own]) => ({ why, flights: own }));
  return { counted, leftOut: leftOut.sort((one, other) => other.flights.length - one.flights.length) };
}
