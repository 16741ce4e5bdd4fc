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

/** Replaces flights by their new entries. */
export function planReplace(
  files: BookFiles,
  frame: ChangeFrame,
  what: string,
  replacements: readonly Replacement[],
): BookChange<Replaced> {
  const isCurrent = ({ entry, madeFrom }: Replacement): boolean =>
    files.get(flightPath(entry.flight)) === madeFrom;
  const fresh = replacements.filter(isCurrent).map(({ entry }) => entry);
  const changedMeanwhile = replacements.filter((one) => !isCurrent(one)).map(({ entry }) => entry.flight);
  const result = { flights: fresh.map(({ flight }) => flight), changedMeanwhile };
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
