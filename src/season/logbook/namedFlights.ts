import { nearestWord } from "../../base/words/index.ts";
import type { KeptFlight } from "./entry.ts";
import type { Digest } from "./entryText.ts";
import { flightPath, flightsIn } from "./names.ts";
import { keptFlightAt } from "./readBook.ts";
import { bookSentences } from "./sentences.ts";
import type { BookFiles } from "./store.ts";

/** A flight of the book with the text of its file. */
export interface NamedFlight {
  readonly entry: KeptFlight;
  readonly text: string;
}

export type NamedFlights =
  | { readonly state: "read"; readonly flights: readonly NamedFlight[] }
  | { readonly state: "unusable"; readonly why: string };

/** The flights of these names from their own files; or which of them is not there or damaged. */
export function namedFlights(names: readonly string[], files: BookFiles, digest: Digest): NamedFlights {
  const flights: NamedFlight[] = [];
  for (const name of new Set(names)) {
    const why = whyUnknown(name, files);
    if (why !== null) return { state: "unusable", why };
    const read = keptFlightAt(files, flightPath(name), digest);
    if (read.state === "damaged")
      return { state: "unusable", why: bookSentences.flightDamaged(name, read.why) };
    flights.push({ entry: read.entry, text: read.text });
  }
  return { state: "read", flights };
}

/** That the book has no flight of this name, with the nearest one that it has; null when it has it. */
export function whyUnknown(name: string, files: BookFiles): string | null {
  if (files.has(flightPath(name))) return null;
  return bookSentences.flightUnknown(name, nearestWord(name, flightsIn(files.keys())));
}
