import { FLIGHT_FOLDER, INDEX_AS_WRITTEN, INDEX_FILE, INDEX_FRONT } from "./bookFormat.ts";
import {
  type BookIndex,
  type BriefIndex,
  type DamagedFile,
  isReadableIndex,
  type PlacedIndex,
  readFront,
  readIndex,
  readPlacesIn,
} from "./bookIndex.ts";
import type { KeptFlight } from "./entry.ts";
import { type Digest, readEntry } from "./entryText.ts";
import { flightPath } from "./names.ts";
import { inOrderOfFlying } from "./order.ts";
import { bookSentences } from "./sentences.ts";
import type { BookFiles } from "./store.ts";

/** Every flight of the book: from the index where it fits, else from each flight's own file. */
export function readFlights(files: BookFiles, digest: Digest): BookIndex {
  const index = readable(files, INDEX_FILE);
  return index === null ? readKeptFlights(files, digest) : readIndex(index);
}

/** The same with only what a timer needs: quicker. */
export function readBriefFlights(files: BookFiles, digest: Digest): BriefIndex {
  const front = readable(files, INDEX_FRONT);
  return (front === null ? null : readFront(front)) ?? readFlights(files, digest);
}

/** The places of its flights alone: quicker. */
export function readPlaces(files: BookFiles, digest: Digest): PlacedIndex {
  const index = readable(files, INDEX_FILE);
  return (index === null ? null : readPlacesIn(index)) ?? readFlights(files, digest);
}

/** The same for a first look that a change looks at again: flights' files that changed since may not show. */
export function readPlacesAsWritten(files: BookFiles, digest: Digest): PlacedIndex {
  const index = readable(files, INDEX_AS_WRITTEN);
  return (index === null ? null : readPlacesIn(index)) ?? readPlaces(files, digest);
}

/** Null without an index, and with one that another release wrote in its own way. */
function readable(files: BookFiles, path: string): string | null {
  const index = files.get(path);
  return index !== undefined && isReadableIndex(index) ? index : null;
}

/** Every flight with all that its own file holds, and the files that cannot be used. */
export interface KeptFlights extends BookIndex {
  readonly entries: readonly KeptFlight[];
}

/** The same from the flights' own files alone. */
export function readKeptFlights(files: BookFiles, digest: Digest): KeptFlights {
  const entries: KeptFlight[] = [];
  const damaged: DamagedFile[] = [];
  for (const path of files.keys()) {
    if (!path.startsWith(FLIGHT_FOLDER)) continue;
    const read = keptFlightAt(files, path, digest);
    if (read.state === "read") entries.push(read.entry);
    else damaged.push({ path, why: read.why });
  }
  return { entries: inOrderOfFlying(entries), damaged };
}

/** A flight as its own file keeps it. */
export function keptFlightAt(
  files: BookFiles,
  path: string,
  digest: Digest,
):
  | { readonly state: "read"; readonly entry: KeptFlight; readonly text: string }
  | { readonly state: "damaged"; readonly why: string } {
  const text = files.get(path) ?? "";
  const read = readEntry(text, digest);
  if (read.state === "damaged") return read;
  const { entry } = read;
  if (flightPath(entry.flight) !== path) {
    return { state: "damaged", why: bookSentences.wrongName(entry.flight) };
  }
  return { state: "read", entry, text };
}
