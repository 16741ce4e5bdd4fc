import { AIRCRAFT_FOLDER, BOOK_FILE, FLIGHT_FOLDER } from "./bookFormat.ts";
import { bookChange, type ChangeFrame, noChange } from "./changeBook.ts";
import type { KeptFlight } from "./entry.ts";
import { type Digest, entryText, objectOf } from "./entryText.ts";
import { firstFree, flightIn, flightPath, isTaken } from "./names.ts";
import { inOrderOfFlying } from "./order.ts";
import { keptFlightAt, readFlights } from "./readBook.ts";
import { bookSentences } from "./sentences.ts";
import type { BookChange, BookFiles, FileChange } from "./store.ts";

/** A whole logbook as one file: its texts as they are, its logs in base 64. */
export interface WholeBook {
  readonly format: "tallywatt/book";
  readonly version: 1;
  readonly files: Readonly<Record<string, string>>;
  readonly logs: Readonly<Record<string, string>>;
}

/** The text of a whole book, its checksum last. */
export function wholeBookText(book: WholeBook, digest: Digest): string {
  return `${JSON.stringify({ ...book, checksum: digest(JSON.stringify(book)) }, null, 1)}\n`;
}

export type ReadWholeBook =
  | { readonly state: "read"; readonly book: WholeBook }
  | { readonly state: "notABook" }
  | { readonly state: "newer" }
  | { readonly state: "damaged" };

export function readWholeBook(text: string, digest: Digest): ReadWholeBook {
  const value = objectOf(text);
  if (value === null) return { state: text.includes('"tallywatt/book"') ? "damaged" : "notABook" };
  if (value.format !== "tallywatt/book") return { state: "notABook" };
  if (typeof value.version === "number" && value.version > 1) return { state: "newer" };
  const { checksum, ...book } = value;
  if (checksum !== digest(JSON.stringify(book))) return { state: "damaged" };
  return { state: "read", book: book as unknown as WholeBook };
}

/** The texts of a book that go with it: aircraft and flights. Undo and index stay at home. */
export function textsToExport(files: BookFiles): Readonly<Record<string, string>> {
  const paths = [...files.keys()].filter(
    (path) => path === BOOK_FILE || path.startsWith(AIRCRAFT_FOLDER) || path.startsWith(FLIGHT_FOLDER),
  );
  return Object.fromEntries(paths.sort().map((path) => [path, files.get(path) ?? ""]));
}

/** What became of the flights of another book. */
export interface TakenIn {
  readonly flights: readonly string[];
  readonly already: number;
  readonly damaged: readonly string[];
}

/**
 * Takes the flights of another book in: those whose log is not there yet, under their own names where
 * these are free. Aircraft that the book does not have come with them; those it has stay as they are.
 */
export function planTakeIn(
  files: BookFiles,
  frame: ChangeFrame,
  other: BookFiles,
  logs: ReadonlyMap<string, Uint8Array>,
): BookChange<TakenIn> {
  const index = readFlights(files, frame.digest);
  const known = new Set(index.entries.map(({ log }) => `${log.sha256} ${log.index}`));
  const paths = [...other.keys()].filter((path) => path.startsWith(FLIGHT_FOLDER));
  const read = paths.map((path) => ({ path, read: keptFlightAt(other, path, frame.digest) }));
  const all = read.flatMap((one) => (one.read.state === "read" ? [one.read.entry] : []));
  const damaged = read.flatMap((one) => (one.read.state === "damaged" ? [one.path] : []));
  const fresh = all.filter(({ log }) => !known.has(`${log.sha256} ${log.index}`));
  const result = { flights: [] as readonly string[], already: all.length - fresh.length, damaged };
  if (fresh.length === 0) return noChange(result);
  const last = index.entries.reduce((most, { sequence }) => Math.max(most, sequence), 0);
  const entries = renamed(inOrderOfFlying(fresh), files, last);
  const made = {
    what: bookSentences.imported(entries.length),
    logs: [...new Set(entries.map(({ log }) => log.path))].flatMap((path) => {
      const bytes = logs.get(path);
      return bytes === undefined ? [] : [{ path, bytes }];
    }),
    files: [
      ...newAircraft(files, other),
      ...entries.map((entry) => ({ path: flightPath(entry.flight), text: entryText(entry, frame.digest) })),
    ],
    index: { ...index, entries: inOrderOfFlying([...index.entries, ...entries]) },
    replaced: [],
  };
  return bookChange(files, frame, made, { ...result, flights: entries.map(({ flight }) => flight) });
}

/** Names that are taken get a number; put-backs follow their flights. */
function renamed(entries: readonly KeptFlight[], files: BookFiles, last: number): readonly KeptFlight[] {
  const taken = new Set([...files.keys()].map((path) => path.toLowerCase()));
  const names = new Map<string, string>();
  for (const { flight } of entries) {
    const isFree = !isTaken(flightPath(flight), taken);
    const name = isFree ? flight : freeName(flight, taken);
    names.set(flight, name);
    taken.add(flightPath(name).toLowerCase());
  }
  return entries.map((entry, at) => ({
    ...entry,
    flight: names.get(entry.flight) ?? entry.flight,
    sequence: last + 1 + at,
    given: {
      ...entry.given,
      putBackFlights: entry.given.putBackFlights.map((flight) => names.get(flight) ?? flight),
    },
  }));
}

function freeName(flight: string, taken: ReadonlySet<string>): string {
  const path = firstFree((number) => flightPath(`${flight}-${number + 1}`), taken);
  return flightIn(path) ?? flight;
}

function newAircraft(files: BookFiles, other: BookFiles): readonly FileChange[] {
  return [...other]
    .filter(([path]) => path.startsWith(AIRCRAFT_FOLDER) && !files.has(path))
    .map(([path, text]) => ({ path, text }));
}
