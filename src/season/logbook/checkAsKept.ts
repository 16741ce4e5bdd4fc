import { type CheckedLogWithRows, checkLog } from "../../flight/check/index.ts";
import type { KeptFlight } from "./entry.ts";
import { dayOf } from "./givenFacts.ts";
import { readingOptionsOf } from "./keptFlights.ts";

/**
 * The log of a flight checked again as the book judged it, with that flight alone. `bytes` must have the kept
 * digest. Null when this release does not find the flight in it.
 */
export function checkAsKept(entry: KeptFlight, bytes: Uint8Array): CheckedLogWithRows | null {
  const { log, facts, budget, aircraft, given, reading } = entry;
  const checked = checkLog(bytes, {
    file: log.file,
    sha256: log.sha256,
    aircraft,
    facts,
    budget,
    readings: [],
    options: readingOptionsOf(reading),
    day: dayOf(given),
  });
  const [flight, analysed] = [checked.check.flights[log.index], checked.analysed[log.index]];
  if (flight === undefined || analysed === undefined) return null;
  return { ...checked, check: { ...checked.check, flights: [flight] }, analysed: [analysed] };
}
