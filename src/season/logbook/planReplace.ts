import { bookChange, type ChangeFrame, noChange } from "./changeBook.ts";
import type { KeptFlight } from "./entry.ts";
import { entryText } from "./entryText.ts";
import { flightPath } from "./names.ts";
import { inOrderOfFlying } from "./order.ts";
import { readFlights } from "./readBook.ts";
import type { BookChange, BookFiles } from "./store.ts";

/** A flight as it shall be, and the text of its file that this was made from. */
export interface Replacement {
  readonly entry: KeptFlight;
  readonly madeFrom: string;
}

/** Flights that were replaced, and those that another program changed meanwhile and that stay. */
export interface Replaced {
  readonly flights: readonly string[];
  readonly changedMeanwhile: readonly string[];
}

/** Replaces flights by their new entries, each by itself: one that was changed meanwhile stays. */
export function planReplace(
  files: BookFiles,
  frame: ChangeFrame,
  what: string,
  replacements: readonly Replacement[],
): BookChange<Replaced> {
  const fresh = replacements.filter((one) => isCurrent(one, files)).map(({ entry }) => entry);
  const result = { flights: fresh.map(({ flight }) => flight), changedMeanwhile: lost(replacements, files) };
  if (fresh.length === 0) return noChange(result);
  const index = readFlights(files, frame.digest);
  const byName = new Map(fresh.map((entry) => [entry.flight, entry]));
  const made = {
    what,
    logs: [],
    files: fresh.map((entry) => ({ path: flightPath(entry.flight), text: entryText(entry, frame.digest) })),
    index: {
      ...index,
      entries: inOrderOfFlying(index.entries.map((entry) => byName.get(entry.flight) ?? entry)),
    },
    replaced: index.entries.filter(({ flight }) => byName.has(flight)),
  };
  return bookChange(files, frame, made, result);
}

/** The same for flights that belong together: all of them, or none where one was changed meanwhile. */
export function planReplaceAll(
  files: BookFiles,
  frame: ChangeFrame,
  what: string,
  replacements: readonly Replacement[],
): BookChange<Replaced> {
  const changedMeanwhile = lost(replacements, files);
  return changedMeanwhile.length > 0
    ? noChange({ flights: [], changedMeanwhile })
    : planReplace(files, frame, what, replacements);
}

function isCurrent({ entry, madeFrom }: Replacement, files: BookFiles): boolean {
  return files.get(flightPath(entry.flight)) === madeFrom;
}

function lost(replacements: readonly Replacement[], files: BookFiles): readonly string[] {
  return replacements.filter((one) => !isCurrent(one, files)).map(({ entry }) => entry.flight);
}
