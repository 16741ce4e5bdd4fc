import { bookChange, type ChangeFrame, noChange } from "./changeBook.ts";
import { flightPath } from "./names.ts";
import { readFlights } from "./readBook.ts";
import { bookSentences } from "./sentences.ts";
import type { BookChange, BookFiles } from "./store.ts";

/** Takes flights out of the book, damaged ones too. Their logs stay until the removal cannot be undone any more. */
export function planRemove(
  files: BookFiles,
  frame: ChangeFrame,
  flights: readonly string[],
): BookChange<readonly string[]> {
  const there = flights.filter((flight) => files.has(flightPath(flight)));
  if (there.length === 0) return noChange([]);
  const { entries, damaged } = readFlights(files, frame.digest);
  const paths = new Set(there.map(flightPath));
  const made = {
    what: bookSentences.removed(there),
    logs: [],
    files: [...paths].map((path) => ({ path, text: null })),
    index: {
      entries: entries.filter(({ flight }) => !there.includes(flight)),
      damaged: damaged.filter(({ path }) => !paths.has(path)),
    },
    replaced: entries.filter(({ flight }) => there.includes(flight)),
  };
  return bookChange(files, frame, made, there);
}
