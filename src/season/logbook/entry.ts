import type { Budget } from "../../aircraft/budget.ts";
import type { Facts } from "../../aircraft/facts.ts";
import type { RememberedReading } from "../../aircraft/index.ts";
import type { Notice } from "../../base/notices/index.ts";
import type { FlightLoad } from "../../flight/analysis/index.ts";
import type { CheckedFlight } from "../../flight/check/index.ts";
import type { OftenMeasures } from "./oftenMeasures.ts";

/** Facts of one flight that no log holds; null where the pilot did not say. */
export interface GivenFacts {
  readonly pack: string | null;
  /** As written, e.g. "18x10". */
  readonly propeller: string | null;
  readonly ambientC: number | null;
  readonly startPct: number | null;
  /** What the charger put back, mAh, and the flights it covers together (this one among them). */
  readonly putBackMah: number | null;
  readonly putBackFlights: readonly string[];
  /** Flight time by the pilot's own watch, s. */
  readonly flownS: number | null;
  /** YYYY-MM-DD. */
  readonly date: string | null;
  readonly note: string | null;
}

export const NOTHING_GIVEN: GivenFacts = {
  pack: null,
  propeller: null,
  ambientC: null,
  startPct: null,
  putBackMah: null,
  putBackFlights: [],
  flownS: null,
  date: null,
  note: null,
};

/** Where the flight's log lies in the book. */
export interface KeptLog {
  readonly path: string;
  /** Name it came with. */
  readonly file: string;
  readonly sha256: string;
  /** Which flight of the log, from 0, and how many were found in it. */
  readonly index: number;
  readonly flights: number;
  readonly headerSignature: string | null;
}

/** The answers that were given with a log, so that it can be read again the same way. */
export type KeptReading = Omit<RememberedReading, "headerSignature"> & {
  readonly delimiter: string | null;
  readonly cells: number | null;
  readonly polePairs: number | null;
};

/** The part of a flight's check that timers, trends and lists work on. */
export type FlightFigures = Pick<
  CheckedFlight,
  "kind" | "startedAt" | "startS" | "endS" | "complete" | "measures" | "headline" | "isChargeDoubtful"
>;

/** One flight of the book, with the facts it was judged with: all that the index holds too. */
export interface LogbookEntry {
  readonly format: "tallywatt/flight";
  readonly version: 1;
  /** Name of the flight in the book, unique and stable: its file name without ending. */
  readonly flight: string;
  /** Counts up in the order of adding. */
  readonly sequence: number;
  readonly aircraft: string;
  readonly log: KeptLog;
  /** Start by the log's clock and the date given, "2026-06-14T10:00:41" or "2026-06-14"; null unknown. */
  readonly startsAt: string | null;
  /** Charge at equal parts of the motor's run, mAh: knows the same flight in another export again. */
  readonly fingerprint: readonly number[] | null;
  readonly given: GivenFacts;
  readonly facts: Facts;
  /** Release that analysed it. */
  readonly release: string;
  readonly check: FlightFigures;
  readonly load: FlightLoad | null;
}

/** The part of a flight that a timer works on: the front of the index holds it. */
export interface BriefFlight extends Pick<LogbookEntry, "flight" | "aircraft" | "given" | "facts" | "load"> {
  readonly check: Pick<FlightFigures, "kind" | "complete" | "isChargeDoubtful"> & {
    readonly measures: OftenMeasures;
  };
}

/** The part of a flight that tells it from others and gives it its place: what adding one more needs. */
export interface PlacedFlight
  extends Pick<LogbookEntry, "flight" | "sequence" | "aircraft" | "log" | "startsAt" | "fingerprint"> {
  readonly given: Pick<GivenFacts, "pack">;
  readonly check: Pick<FlightFigures, "startedAt" | "startS" | "endS">;
}

/** A flight as its own file keeps it: with the plan, the judgements and the notices. */
export interface KeptFlight extends LogbookEntry {
  readonly reading: KeptReading;
  readonly budget: Budget;
  readonly check: CheckedFlight;
  readonly notices: readonly Notice[];
}
