import { objectOf } from "./entryText.ts";
import { bookSentences } from "./sentences.ts";

export const BOOK_FILE = "book.json";
export const INDEX_FILE = "index.txt";
/** No file of its own: a store that can read the front of the index alone gives it under this name. */
export const INDEX_FRONT = "index.txt/front";
/** The whole index, whole in itself but not held against the flights' files: enough for a first look. */
export const INDEX_AS_WRITTEN = "index.txt/as-written";
export const UNDO_FILE = "undo.json";
export const FLIGHT_FOLDER = "flights/";
export const AIRCRAFT_FOLDER = "aircraft/";

/** Format of the books that this release writes. */
const VERSION = 1;

/** A logbook that must not be touched: a newer format, or a book.json that says nothing. */
export class UnusableBookError extends Error {
  readonly isNewer: boolean;
  constructor(text: string, isNewer: boolean) {
    super(text);
    this.name = "UnusableBookError";
    this.isNewer = isNewer;
  }
}

/** The text of book.json for a new logbook. */
export function newBookText(release: string): string {
  return `${JSON.stringify({ format: "tallywatt/logbook", version: VERSION, release }, null, 1)}\n`;
}

/**
 * Stops at a logbook of a newer format or with a damaged book.json. Every format up to today's passes;
 * undefined is a book that is not there yet.
 */
export function assertUsable(text: string | undefined): void {
  if (text === undefined) return;
  const book = objectOf(text);
  if (book?.format !== "tallywatt/logbook" || typeof book.version !== "number") {
    throw new UnusableBookError(bookSentences.bookDamaged(), false);
  }
  const { version, release } = book;
  if (version > VERSION) {
    throw new UnusableBookError(
      bookSentences.newer(version, typeof release === "string" ? release : null),
      true,
    );
  }
  if (!Number.isInteger(version) || version < 1) {
    throw new UnusableBookError(bookSentences.bookDamaged(), false);
  }
}
