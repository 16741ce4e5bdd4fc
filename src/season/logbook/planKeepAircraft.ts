import type { BookAircraft } from "./bookAircraft.ts";
import { bookChange, type ChangeFrame, noChange } from "./changeBook.ts";
import { readFlights } from "./readBook.ts";
import { bookSentences } from "./sentences.ts";
import type { BookChange, BookFiles } from "./store.ts";

/** Keeps an aircraft file as it is given, in place of what its path holds. The flights stay as they were judged. */
export function planKeepAircraft(
  files: BookFiles,
  frame: ChangeFrame,
  { name, path, text }: Pick<BookAircraft, "name" | "path" | "text">,
): BookChange<null> {
  if (files.get(path) === text) return noChange(null);
  const index = readFlights(files, frame.digest);
  const what = bookSentences.keptAircraft(name);
  return bookChange(files, frame, { what, logs: [], files: [{ path, text }], index, replaced: [] }, null);
}
