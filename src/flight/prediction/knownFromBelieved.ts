import { currentDoubt } from "../analysis/index.ts";
import type { KnownParts, LoggedFlight, NamedFlight } from "./knownParts.ts";
import { knownPartsFrom } from "./knownPartsFrom.ts";

/** What the flights say about the parts whose current is to be believed; the others are named with the reason. */
export function knownFromBelieved(flights: readonly NamedFlight[]): KnownParts {
  const told = flights.map((flight) => ({ flight, why: doubtOf(flight) }));
  return {
    ...knownPartsFrom(told.filter(({ why }) => why === null).map(({ flight }) => flight)),
    leftOut: told.flatMap(({ flight: { name }, why }) => (why === null ? [] : [{ name, why }])),
  };
}

/** True of a flight that `knownFromBelieved` counts. */
export function isBelieved(flight: LoggedFlight): boolean {
  return doubtOf(flight) === null;
}

function doubtOf(flight: LoggedFlight): string | null {
  return currentDoubt(flight, flight.facts.sensors.currentAccuracyPct);
}
