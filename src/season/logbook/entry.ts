import type { Budget } from "../../aircraft/budget.ts";
import type { Facts } from "../../aircraft/facts.ts";
import type { Notice } from "../../base/notices/index.ts";
import type { FlightLoad } from "../../flight/analysis/index.ts";
import type { CheckedFlight } from "../../flight/check/index.ts";

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

/** Where the flight's log lies in the book. */
export interface KeptLog {
  readonly path: string;
  /** Name it came with. */
  readonly file: string;
  readonly sha256: string;
  /** Which flight of the log, from 0. */
  readonly index: number;
  readonly headerSignature: string | null;
}

/** One flight of the book, with the facts it was judged with. */
export interface LogbookEntry {
  readonly format: "tallywatt/flight";
  readonly version: 1;
  /** Name of the flight in the book, unique and stable: its file name without ending. */
  readonly flight: string;
  /** Counts up in the order of adding. */
  readonly sequence: number;
  readonly aircraft: string;
  readonly log: KeptLog;
  readonly given: GivenFacts;
  readonly facts: Facts;
  readonly budget: Budget;
  /** Release that analysed it. */
  readonly release: string;
  readonly check: CheckedFlight;
  readonly load: FlightLoad | null;
  readonly notices: readonly Notice[];
}
