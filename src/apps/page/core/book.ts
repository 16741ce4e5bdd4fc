import type {
  BookFiles,
  ChangeFrame,
  KeptFlight,
  LogbookEntry,
  OpenedBook,
  Store,
} from "../../../season/logbook/index.ts";
import { flightsOfAircraft, readFlights, readKeptFlights } from "../../../season/logbook/index.ts";
import { sha256Of } from "./sha256.ts";

/** The book of the page and what its changes are signed with. */
export interface Book extends Store {
  readonly release: string;
}

/** `run` names what is undone together; each change by itself without one. */
export function frameOf({ release }: Book, run?: string): ChangeFrame {
  return { digest: sha256Of, release, run: run ?? randomName() };
}

/** The book for one run of changes. */
export function openedAs(book: Book, run?: string): OpenedBook {
  const { read, readLog, change } = book;
  return { frame: frameOf(book, run), read, readLog, change };
}

export function randomName(): string {
  return [...crypto.getRandomValues(new Uint8Array(16))]
    .map((byte) => byte.toString(16).padStart(2, "0"))
    .join("");
}

/** Every flight in the order of flying, without what only their own files hold. */
export function allFlights(files: BookFiles): readonly LogbookEntry[] {
  return readFlights(files, sha256Of).entries;
}

/** The same of one aircraft. */
export function flightsOf(files: BookFiles, aircraft: string): readonly LogbookEntry[] {
  return flightsOfAircraft(allFlights(files), aircraft);
}

export function keptFlightsOf(files: BookFiles, aircraft: string): readonly KeptFlight[] {
  return flightsOfAircraft(readKeptFlights(files, sha256Of).entries, aircraft);
}
