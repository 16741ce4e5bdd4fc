import type { BookIndex, DamagedFile } from "./bookIndex.ts";
import { calibrateCurrent, putBacksLeftOut } from "./calibration.ts";
import type { CurrentCalibration } from "./currentCalibration.ts";
import type { FlightFigures, GivenFacts, LogbookEntry } from "./entry.ts";

/** One flight as a list shows it. */
export interface ListedFlight
  extends Pick<LogbookEntry, "flight" | "aircraft" | "startsAt" | "release">,
    Pick<FlightFigures, "kind" | "complete" | "headline" | "measures"> {
  /** Name that its log came with. */
  readonly log: string;
  readonly given: GivenFacts;
}

/** The JSON result of `list`: format tallywatt/list, version 1. */
export interface ListResult {
  readonly format: "tallywatt/list";
  readonly version: 1;
  /** In the order of flying. */
  readonly flights: readonly ListedFlight[];
  readonly damaged: readonly DamagedFile[];
  readonly calibration: CurrentCalibration | null;
  readonly putBacksLeftOut: CurrentCalibration["leftOut"];
}

/** The flights of one aircraft, whatever the case of its name; of all for null. */
export function listResult(index: BookIndex, aircraft: string | null): ListResult {
  const entries = flightsOfAircraft(index.entries, aircraft);
  return {
    format: "tallywatt/list",
    version: 1,
    flights: entries.map(listed),
    damaged: index.damaged,
    calibration: calibrateCurrent(entries),
    putBacksLeftOut: putBacksLeftOut(entries),
  };
}

export function flightsOfAircraft<Entry extends Pick<LogbookEntry, "aircraft">>(
  entries: readonly Entry[],
  aircraft: string | null,
): readonly Entry[] {
  if (aircraft === null) return entries;
  return entries.filter((entry) => entry.aircraft.toLowerCase() === aircraft.toLowerCase());
}

function listed({ flight, aircraft, startsAt, log, given, release, check }: LogbookEntry): ListedFlight {
  const { kind, complete, headline } = check;
  // Plain data: an index unpacks its measures on demand, and such an object cannot leave a worker.
  const measures = { ...check.measures };
  return { flight, aircraft, kind, complete, startsAt, log: log.file, given, release, headline, measures };
}
