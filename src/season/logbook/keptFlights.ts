import type { Budget } from "../../aircraft/budget.ts";
import type { Facts } from "../../aircraft/facts.ts";
import type { CheckedLogWithRows } from "../../flight/check/index.ts";
import type { ReadingOptions } from "../../log/reading/index.ts";
import type { GivenFacts, KeptFlight, KeptLog, KeptReading } from "./entry.ts";
import { chargeFingerprint } from "./fingerprint.ts";
import { startTime } from "./startTime.ts";

/** What one flight of a checked log says, before it has a name in a book. */
export type FoundFlight = Pick<KeptFlight, "check" | "load" | "notices" | "fingerprint" | "startsAt">;

/** The flights of a checked log; empty when a question or a refusal ended the check. */
export function foundFlights(
  { check, recording, analysed }: CheckedLogWithRows,
  given: GivenFacts,
  reading: KeptReading,
): readonly FoundFlight[] {
  return check.flights.map((flight, index) => {
    const own = analysed[index];
    return {
      check: flight,
      load: own?.load ?? null,
      notices: [...(recording?.notices ?? []), ...(own?.notices ?? [])],
      fingerprint: recording === null ? null : chargeFingerprint(recording, flight.startS, flight.endS),
      startsAt: startTime(flight.startedAt, given.date, reading.dateOrder),
    };
  });
}

/** An entry in the order of keys that its file has. */
export function keptFlight(
  place: Pick<KeptFlight, "flight" | "sequence" | "aircraft"> & { readonly log: KeptLog },
  judgedWith: {
    readonly given: GivenFacts;
    readonly reading: KeptReading;
    readonly facts: Facts;
    readonly budget: Budget;
    readonly release: string;
  },
  found: FoundFlight,
): KeptFlight {
  const { given, reading, facts, budget, release } = judgedWith;
  const { check, load, notices, fingerprint, startsAt } = found;
  return {
    format: "tallywatt/flight",
    version: 1,
    flight: place.flight,
    sequence: place.sequence,
    aircraft: place.aircraft,
    log: place.log,
    startsAt,
    given,
    reading,
    facts,
    budget,
    release,
    check,
    load,
    fingerprint,
    notices,
  };
}

/** The answers given with a log as its entry keeps them. */
export function keptReading(options: ReadingOptions): KeptReading {
  const { columns, units, ...rest } = options;
  return { columns: Object.fromEntries(columns), units: Object.fromEntries(units), ...rest };
}

/** And back, to read the log again the same way. */
export function readingOptionsOf({ columns, units, ...rest }: KeptReading): ReadingOptions {
  return { columns: mapOf(columns), units: mapOf(units), ...rest };
}

function mapOf(record: KeptReading["columns"]): ReadingOptions["columns"] {
  const entries = Object.entries(record).filter((entry) => entry[1] !== undefined);
  return new Map(entries) as ReadingOptions["columns"];
}
