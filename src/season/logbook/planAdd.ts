import { withRememberedReading } from "../../aircraft/index.ts";
import type { Notice } from "../../base/notices/index.ts";
import type { CheckedLogWithRows } from "../../flight/check/index.ts";
import type { BookAircraft } from "./bookAircraft.ts";
import type { PlacedIndex } from "./bookIndex.ts";
import { bookChange, type ChangeFrame, noChange } from "./changeBook.ts";
import type { GivenFacts, KeptFlight, KeptReading, PlacedFlight } from "./entry.ts";
import { entryText } from "./entryText.ts";
import { isSameFlight } from "./fingerprint.ts";
import { judgedFacts } from "./givenFacts.ts";
import { type FoundFlight, foundFlights, keptFlight } from "./keptFlights.ts";
import { flightName, flightPath, flightsIn, logPath } from "./names.ts";
import { inOrderOfFlying } from "./order.ts";
import { readPlaces } from "./readBook.ts";
import { readingToRemember } from "./readingToRemember.ts";
import { bookSentences } from "./sentences.ts";
import type { BookChange, BookFiles, FileChange } from "./store.ts";

/** A log to add, checked with the facts of its flight. */
export interface AddRequest {
  readonly bytes: Uint8Array;
  /** The log's own name, no folder. */
  readonly file: string;
  readonly checked: CheckedLogWithRows;
  readonly aircraft: BookAircraft;
  /** The aircraft came from the book as it was read, not from a file outside: then the book's own text stays. */
  readonly isOfBook: boolean;
  readonly given: GivenFacts;
  readonly reading: KeptReading;
  /** Flights added before in this run that the put-back covers too. */
  readonly chargedWith: readonly string[];
  /** Adds a flight that looks like one of the book exported again. */
  readonly isAgain: boolean;
}

export type Added =
  | { readonly state: "added" | "already"; readonly flights: readonly string[] }
  | { readonly state: "stopped"; readonly notices: readonly Notice[] };

/** A flight of the log that the book does not hold yet, and which one of the log it is. */
interface NewFlight {
  readonly index: number;
  readonly found: FoundFlight;
}

/** Adds the flights of one log: the log, an entry a flight, and the aircraft file where it is new. */
export function planAdd(files: BookFiles, frame: ChangeFrame, request: AddRequest): BookChange<Added> {
  const index = readPlaces(files, frame.digest);
  const { sha256, notices } = request.checked.check.log;
  const known = flightsOfLog(index, sha256);
  const all = foundFlights(request.checked, request.given, request.reading);
  const fresh = all.flatMap((found, at) =>
    known.some(({ log }) => log.index === at) ? [] : [{ index: at, found }],
  );
  if (known.length > 0 && fresh.length === 0) return planKeepLog(request.bytes, known);
  const unread = notices.filter(isStopping);
  const stopping = unread.length > 0 ? unread : questions(index, all.length, fresh, request);
  if (stopping.length > 0) return noChange({ state: "stopped", notices: stopping });
  const entries = newEntries(files, index, fresh, all.length, frame, request);
  const flights = entries.map(({ flight }) => flight);
  const made = {
    what: bookSentences.added(flights),
    logs: [{ path: logPath(request.file, sha256), bytes: request.bytes }],
    files: [
      ...aircraftChange(files, request),
      ...entries.map((entry) => ({ path: flightPath(entry.flight), text: entryText(entry, frame.digest) })),
    ],
    index: { ...index, entries: inOrderOfFlying([...index.entries, ...entries]) },
    replaced: [],
  };
  return bookChange(files, frame, made, { state: "added", flights });
}

/** The flights that came from the log with these bytes. */
export function flightsOfLog<Flight extends PlacedFlight>(
  { entries }: { readonly entries: readonly Flight[] },
  sha256: string,
): readonly Flight[] {
  return entries.filter(({ log }) => log.sha256 === sha256);
}

/** Every flight of the log is there: nothing changes, but a damaged or lost copy of the log is put right. */
export function planKeepLog(bytes: Uint8Array, known: readonly PlacedFlight[]): BookChange<Added> {
  const paths = [...new Set(known.map(({ log }) => log.path))];
  const result: Added = { state: "already", flights: known.map(({ flight }) => flight) };
  return { ...noChange(result), logs: paths.map((path) => ({ path, bytes })) };
}

function isStopping({ severity }: Notice): boolean {
  return severity === "question" || severity === "refusal";
}

function questions(
  { entries }: PlacedIndex,
  inLog: number,
  fresh: readonly NewFlight[],
  { isAgain, given }: AddRequest,
): readonly Notice[] {
  if (fresh.length === 0) {
    return [{ code: "nothing-flew", severity: "refusal", text: bookSentences.nothingFlew() }];
  }
  if (given.flownS !== null && inLog > 1) {
    const text = bookSentences.oneFlightOnly("--flown", inLog);
    return [{ code: "flown-of-several", severity: "question", text }];
  }
  if (isAgain) return [];
  return fresh.flatMap(({ found }) => {
    const same = entries.find((entry) => isSameFlight(entry, found));
    if (same === undefined) return [];
    const text = bookSentences.sameFlight(same.flight);
    return [{ code: "same-flight", severity: "question", text, options: ["--again"] } as const];
  });
}

function newEntries(
  files: BookFiles,
  { entries }: PlacedIndex,
  fresh: readonly NewFlight[],
  inLog: number,
  { release }: ChangeFrame,
  request: AddRequest,
): readonly KeptFlight[] {
  const { file, checked, aircraft, given, reading, chargedWith } = request;
  const names = newNames(files, fresh, inLog, file);
  const first = entries.reduce((most, { sequence }) => Math.max(most, sequence), 0) + 1;
  const { sha256, headerSignature } = checked.check.log;
  const facts = judgedFacts(aircraft.facts, given, reading.cells);
  return fresh.map(({ index, found }, at) => {
    const isLast = at === fresh.length - 1;
    const own = withPutBack(given, isLast, [...chargedWith, ...names]);
    const log = { path: logPath(file, sha256), file, sha256, index, flights: inLog, headerSignature };
    const place = { flight: names[at] ?? "", sequence: first + at, aircraft: aircraft.name, log };
    return keptFlight(place, { given: own, reading, facts, budget: aircraft.budget, release }, found);
  });
}

function newNames(
  files: BookFiles,
  fresh: readonly NewFlight[],
  inLog: number,
  file: string,
): readonly string[] {
  const taken = takenNames(files);
  return fresh.map(({ index, found }) => {
    const day = found.startsAt === null ? null : found.startsAt.slice(0, 10);
    const name = flightName(day, file, { index, flights: inLog }, taken);
    taken.add(name.toLowerCase());
    return name;
  });
}

/** One charge after several flights is kept with the last of them and names them all. */
function withPutBack(given: GivenFacts, isLast: boolean, flights: readonly string[]): GivenFacts {
  if (given.putBackMah === null || !isLast) return { ...given, putBackMah: null, putBackFlights: [] };
  return { ...given, putBackFlights: flights };
}

/** Names of the files there are, damaged ones too, in lower case. */
function takenNames(files: BookFiles): Set<string> {
  return new Set(flightsIn(files.keys()).map((flight) => flight.toLowerCase()));
}

function aircraftChange(files: BookFiles, request: AddRequest): readonly FileChange[] {
  const { aircraft, checked, reading } = request;
  const { headerSignature } = checked.check.log;
  const answer =
    headerSignature === null ? null : readingToRemember(headerSignature, aircraft.readings, reading);
  // The book's own file may have been edited while the log was analysed: the edit stays.
  const now = files.get(aircraft.path);
  const base = request.isOfBook && now !== undefined ? now : aircraft.text;
  const text = answer === null ? base : withRememberedReading(base, answer);
  return now === text ? [] : [{ path: aircraft.path, text }];
}
