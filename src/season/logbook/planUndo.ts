import { AIRCRAFT_FOLDER, FLIGHT_FOLDER } from "./bookFormat.ts";
import type { BookIndex } from "./bookIndex.ts";
import { bookChange, type ChangeFrame, noChange } from "./changeBook.ts";
import type { Digest } from "./entryText.ts";
import { flightPath } from "./names.ts";
import { inOrderOfFlying } from "./order.ts";
import { keptFlightAt, readFlights } from "./readBook.ts";
import type { BookChange, BookFiles, FileChange } from "./store.ts";
import { readUndo, type UndoRecord } from "./undo.ts";

export type Undone =
  | { readonly state: "undone" | "madeAgain"; readonly what: string; readonly files: readonly string[] }
  | { readonly state: "nothing" }
  | { readonly state: "damaged" }
  | { readonly state: "outdated"; readonly path: string };

/** Takes the last change back: its files are again as they were, to the byte. Undone twice it is made again. */
export function planUndo(files: BookFiles, frame: ChangeFrame): BookChange<Undone> {
  const last = readUndo(files, frame.digest);
  if (last.state !== "read") {
    return noChange({ state: last.state === "none" ? "nothing" : "damaged" });
  }
  const { before, what, isUndo } = last.record;
  const edited = editedSince(files, last.record, frame.digest);
  if (edited !== null) return noChange({ state: "outdated", path: edited });
  const index = readFlights(files, frame.digest);
  const paths = new Set(before.map(({ path }) => path));
  const made = {
    what,
    isUndo: !isUndo,
    logs: [],
    files: before,
    index: restoredIndex(index, before, frame.digest),
    replaced: index.entries.filter(({ flight }) => paths.has(flightPath(flight))),
  };
  return bookChange(files, frame, made, { state: isUndo ? "madeAgain" : "undone", what, files: [...paths] });
}

/** An aircraft file that its owner edited after the change; a flight's file has no other author. */
function editedSince(files: BookFiles, { after }: UndoRecord, digest: Digest): string | null {
  const edited = after.find(({ path, digest: then }) => {
    if (!path.startsWith(AIRCRAFT_FOLDER)) return false;
    const text = files.get(path);
    return (text === undefined ? null : digest(text)) !== then;
  });
  return edited?.path ?? null;
}

function restoredIndex(index: BookIndex, before: readonly FileChange[], digest: Digest): BookIndex {
  const paths = new Set(before.map(({ path }) => path));
  const texts = new Map(before.flatMap(({ path, text }) => (text === null ? [] : [[path, text] as const])));
  const restored = [...texts.keys()]
    .filter((path) => path.startsWith(FLIGHT_FOLDER))
    .map((path) => ({ path, read: keptFlightAt(texts, path, digest) }));
  return {
    entries: inOrderOfFlying([
      ...index.entries.filter(({ flight }) => !paths.has(flightPath(flight))),
      ...restored.flatMap(({ read }) => (read.state === "read" ? [read.entry] : [])),
    ]),
    damaged: [
      ...index.damaged.filter(({ path }) => !paths.has(path)),
      ...restored.flatMap(({ path, read }) => (read.state === "damaged" ? [{ path, why: read.why }] : [])),
    ],
  };
}
