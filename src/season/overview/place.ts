import type { LogbookEntry } from "../logbook/index.ts";
import { flownPropeller } from "../timer/index.ts";

/** Where a flight stands in the season. */
export interface SeasonFlight {
  readonly entry: LogbookEntry;
  /** Counts every flight and bench run, from 0. */
  readonly place: number;
  /** Counts flights as the pilot does, from 1; null for a bench run. */
  readonly number: number | null;
  /** YYYY-MM-DD, or null when nobody knows. */
  readonly day: string | null;
}

/** The flights of a season with their places; `entries` in the order of flying. */
export function seasonFlights(entries: readonly LogbookEntry[]): readonly SeasonFlight[] {
  let flown = 0;
  return entries.map((entry, place) => {
    const isFlight = entry.check.kind === "flight";
    if (isFlight) flown += 1;
    return { entry, place, number: isFlight ? flown : null, day: dayOf(entry) };
  });
}

function dayOf({ startsAt, given }: LogbookEntry): string | null {
  return /^\d{4}-\d\d-\d\d/.exec(startsAt ?? given.date ?? "")?.[0] ?? null;
}

/** The propeller a flight was flown on; null when nobody said. */
export function flownPropellerOf({ entry }: SeasonFlight): string | null {
  return flownPropeller(entry);
}
