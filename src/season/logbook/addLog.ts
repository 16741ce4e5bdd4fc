import { checkLog, type FlightCheck } from "../../flight/check/index.ts";
import type { ReadingOptions } from "../../log/reading/index.ts";
import type { BookAircraft, ChosenAircraft } from "./bookAircraft.ts";
import type { GivenFacts, LogbookEntry } from "./entry.ts";
import { dayOf, judgedFacts } from "./givenFacts.ts";
import { keptReading } from "./keptFlights.ts";
import { flightsOfAircraft } from "./listResult.ts";
import type { OpenedBook } from "./openedBook.ts";
import { type Added, type AddRequest, flightsOfLog, planAdd, planKeepLog } from "./planAdd.ts";
import { readFlights, readPlacesAsWritten } from "./readBook.ts";
import type { BookFiles } from "./store.ts";
import { unknownPack } from "./unknownPack.ts";
import { unusedFacts } from "./unusedFacts.ts";

/** A log's bytes under its own name, no folder. */
export interface LogToAdd {
  readonly file: string;
  readonly bytes: Uint8Array;
}

/** What is said with a log. */
export interface AddTerms {
  /** Whose flight it is, from the book's files and what else is known. */
  readonly aircraftOf: (files: BookFiles) => ChosenAircraft;
  readonly given: GivenFacts;
  readonly options: ReadingOptions;
  /** Flights added before that the put-back covers too. */
  readonly chargedWith: readonly string[];
  /** Adds a flight that looks like one of the book exported again. */
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
  /** Facts of a log that was there already, which say something else than its flights do: not taken in. */
  readonly unused: Partial<GivenFacts>;
  /** That the pack is not known of this aircraft, where others are. */
  readonly packNote: string | null;
}

/** For a log about which nothing more is to be said. */
export const NOTHING_MORE = { unused: {}, packNote: null } as const;

/** Adds one log to the book. A log that is there already is known by its digest, before it is analysed. */
export async function addLog(book: OpenedBook, log: LogToAdd, terms: AddTerms): Promise<AddedLog> {
  const { file, bytes } = log;
  const { digest } = book.frame;
  const sha256 = digest(bytes);
  const before = await book.read((files) => {
    const chosen = terms.aircraftOf(files);
    const isOfBook = chosen.state === "chosen" && files.get(chosen.aircraft.path) === chosen.aircraft.text;
    const index = readPlacesAsWritten(files, digest);
    const isKnown = flightsOfLog(index, sha256).length > 0;
    const name = chosen.state === "chosen" ? chosen.aircraft.name : null;
    const packNote = unknownPack(terms.given.pack, flightsOfAircraft(index.entries, name));
    return {
      known: isKnown ? flightsOfLog(readFlights(files, digest), sha256) : [],
      chosen,
      isOfBook,
      packNote,
    };
  });
  const [first] = before.known;
  if (first !== undefined && before.known.length >= first.log.flights) {
    const outcome = await alreadyThere(bytes, before.known, book);
    const unused = unusedFacts(terms.given, before.known);
    return { file, sha256, aircraft: first.aircraft, outcome, check: null, unused, packNote: null };
  }
  if (before.chosen.state === "stopped") {
    const { notices } = before.chosen;
    return {
      file,
      sha256,
      aircraft: null,
      outcome: { state: "stopped", notices },
      check: null,
      ...NOTHING_MORE,
    };
  }
  const { aircraft } = before.chosen;
  const { isOfBook, packNote } = before;
  const added = await addChecked(book, log, sha256, { aircraft, isOfBook }, terms);
  return { ...added, packNote: added.outcome.state === "added" ? packNote : null };
}

/** Writes only where the kept log is lost or damaged. */
async function alreadyThere(
  bytes: Uint8Array,
  known: readonly LogbookEntry[],
  book: OpenedBook,
): Promise<Added> {
  for (const { log } of known) {
    const kept = await book.readLog(log.path);
    if (kept === null || book.frame.digest(kept) !== log.sha256) {
      return book.change(() => planKeepLog(bytes, known));
    }
  }
  return { state: "already", flights: known.map(({ flight }) => flight) };
}

async function addChecked(
  book: OpenedBook,
  { file, bytes }: LogToAdd,
  sha256: string,
  { aircraft, isOfBook }: { readonly aircraft: BookAircraft; readonly isOfBook: boolean },
  { given, options, chargedWith, isAgain }: AddTerms,
): Promise<AddedLog> {
  const { name, budget, readings } = aircraft;
  const facts = judgedFacts(aircraft.facts, given, options.cells);
  const own = { file, sha256, aircraft: name, facts, budget, readings };
  const checked = checkLog(bytes, { ...own, options, day: dayOf(given) });
  const reading = keptReading(options);
  const request: AddRequest = {
    bytes,
    file,
    checked,
    aircraft,
    isOfBook,
    given,
    reading,
    chargedWith,
    isAgain,
  };
  const outcome = await book.change((files) => planAdd(files, book.frame, request));
  return { file, sha256, aircraft: name, outcome, check: checked.check, ...NOTHING_MORE };
}
