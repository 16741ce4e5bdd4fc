import type { FlightCheck } from "../../../flight/check/index.ts";
import type { ReadingOptions } from "../../../log/reading/index.ts";
import {
  type Added,
  type AddRequest,
  type BookAircraft,
  type ChosenAircraft,
  dayOf,
  flightsOfLog,
  type GivenFacts,
  judgedFacts,
  keptReading,
  type LogbookEntry,
  planAdd,
  planKeepLog,
  readFlights,
} from "../../../season/logbook/index.ts";
import { sha256Of } from "../../disk/index.ts";
import { checkBytes } from "../checkOne.ts";
import type { Io } from "../io.ts";
import { logName, readLogBytes } from "../logInput.ts";
import type { Talk } from "../talk.ts";
import type { OpenBook } from "./openBook.ts";

/** What is the same for every log of one call. */
export interface AddWork {
  readonly book: OpenBook;
  readonly io: Io;
  readonly talk: Talk;
  readonly aircraftOf: (files: Parameters<Parameters<OpenBook["read"]>[0]>[0]) => ChosenAircraft;
  readonly given: GivenFacts;
  readonly options: ReadingOptions;
  readonly isAgain: boolean;
}

/** What became of one log. */
export interface AddedLog {
  readonly file: string;
  readonly sha256: string;
  readonly aircraft: string | null;
  readonly outcome: Added;
  /** Null for a log that was there already or could not be opened. */
  readonly check: FlightCheck | null;
}

/**
 * Adds one log to the book. A log that is there already is known by its digest, before it is analysed.
 * @param chargedWith flights of this call that the put-back covers too
 */
export async function addLog(log: string, chargedWith: readonly string[], work: AddWork): Promise<AddedLog> {
  const file = logName(log);
  const input = await readLogBytes(log, work.io, work.talk);
  if (input.state === "unusable") {
    const { code, text } = input;
    const outcome: Added = { state: "stopped", notices: [{ code, severity: "refusal", text }] };
    return { file, sha256: "", aircraft: null, outcome, check: null };
  }
  const { bytes } = input;
  const sha256 = sha256Of(bytes);
  const before = await work.book.read((files) => ({
    known: flightsOfLog(readFlights(files, sha256Of), sha256),
    chosen: work.aircraftOf(files),
  }));
  const [first] = before.known;
  if (first !== undefined && before.known.length >= first.log.flights) {
    const outcome = await alreadyThere(bytes, before.known, work.book);
    return { file, sha256, aircraft: first.aircraft, outcome, check: null };
  }
  if (before.chosen.state === "stopped") {
    const { notices } = before.chosen;
    return { file, sha256, aircraft: null, outcome: { state: "stopped", notices }, check: null };
  }
  return addChecked(file, bytes, before.chosen.aircraft, chargedWith, work);
}

/** Writes only where the kept log is lost or damaged. */
async function alreadyThere(
  bytes: Uint8Array,
  known: readonly LogbookEntry[],
  book: OpenBook,
): Promise<Added> {
  for (const { log } of known) {
    const kept = await book.readLog(log.path);
    if (kept === null || sha256Of(kept) !== log.sha256) return book.change(() => planKeepLog(bytes, known));
  }
  return { state: "already", flights: known.map(({ flight }) => flight) };
}

async function addChecked(
  file: string,
  bytes: Uint8Array,
  aircraft: BookAircraft,
  chargedWith: readonly string[],
  { book, given, options, isAgain }: AddWork,
): Promise<AddedLog> {
  const checked = checkBytes(file, bytes, {
    aircraft: { ...aircraft, facts: judgedFacts(aircraft.facts, given, options.cells) },
    options,
    day: dayOf(given),
  });
  const reading = keptReading(options);
  const request: AddRequest = { bytes, file, checked, aircraft, given, reading, chargedWith, isAgain };
  const outcome = await book.change((files) => planAdd(files, book.frame, request));
  const { sha256 } = checked.check.log;
  return { file, sha256, aircraft: aircraft.name, outcome, check: checked.check };
}
