import type { SeasonFlight } from "../../../season/overview/index.ts";
import type { FlightAxis } from "../../charts/index.ts";

const MOST_TICKS = 15;
const STEPS = [1, 2, 5, 10, 20, 50, 100, 200, 500];

/** The flight axis of a season: numbers of the flights at a round step, and the first, a middle and the last day. */
export function seasonAxis(flights: readonly SeasonFlight[]): FlightAxis {
  const numbered = flights.flatMap(({ number, place }) => (number === null ? [] : [{ number, place }]));
  const step = STEPS.find((one) => numbered.length / one <= MOST_TICKS) ?? 1000;
  const ticks = numbered
    .filter(({ number }) => number % step === 0)
    .map(({ number, place }) => ({ place, words: String(number) }));
  return { places: flights.length, ticks, days: daysOf(flights) };
}

function daysOf(flights: readonly SeasonFlight[]): FlightAxis["days"] {
  const known = flights.flatMap(({ place, day }) => (day === null ? [] : [{ place, words: day }]));
  const middle = known[Math.floor((known.length - 1) / 2)];
  const chosen = known.length < 5 ? [known[0], known.at(-1)] : [known[0], middle, known.at(-1)];
  const days = chosen.filter((one) => one !== undefined);
  return days.filter((day, index) => day.words !== days[index - 1]?.words);
}
