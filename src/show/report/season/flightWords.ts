import type { SeasonFlight } from "../../../season/overview/index.ts";

/** How a flight is called in a sentence and in a table's first column. */
export interface FlightReference {
  readonly words: string;
  readonly short: string;
}

/** "flight 7" and "7"; a bench run has no number of its own. */
export function flightReference({ number, day }: SeasonFlight): FlightReference {
  if (number !== null) return { words: `flight ${number}`, short: String(number) };
  return { words: day === null ? "a bench run" : `the bench run of ${day}`, short: "bench" };
}

/** Neighbouring flights: "7 to 15". */
export function flightRange(from: SeasonFlight, to: SeasonFlight): string {
  const [first, last] = [flightReference(from).short, flightReference(to).short];
  return from.place === to.place ? first : `${first} to ${last}`;
}
