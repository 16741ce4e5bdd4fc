import { UNDO_FILE } from "./bookFormat.ts";
import { type Digest, objectOf } from "./entryText.ts";
import type { BookFiles, FileChange } from "./store.ts";

/** What the last change replaced: enough to take it back. */
export interface UndoRecord {
  readonly format: "tallywatt/undo";
  readonly version: 1;
  /** Counts the changes of this book. */
  readonly change: number;
  /** The run of the command that made it; changes of one run are taken back together. */
  readonly run: string;
  /** What the change did, in words. */
  readonly what: string;
  /** True when the change was itself an undo: undoing it makes the change before again. */
  readonly isUndo: boolean;
  /** The files before it; null: there was none. */
  readonly before: readonly FileChange[];
  /** Digest of each of these files after it (null: none): undo leaves a file that was changed since. */
  readonly after: readonly { readonly path: string; readonly digest: string | null }[];
  /** Logs that only these files may still need. */
  readonly logs: readonly string[];
}

export type ReadUndo =
  | { readonly state: "none" | "damaged" }
  | { readonly state: "read"; readonly record: UndoRecord };

export function readUndo(files: BookFiles, digest: Digest): ReadUndo {
  const text = files.get(UNDO_FILE);
  if (text === undefined) return { state: "none" };
  const value = objectOf(text);
  if (value === null) return { state: "damaged" };
  const { checksum, ...record } = value;
  if (checksum !== digest(JSON.stringify(record)) || record.format !== "tallywatt/undo") {
    return { state: "damaged" };
  }
  return { state: "read", record: record as unknown as UndoRecord };
}

export function undoText(record: UndoRecord, digest: Digest): string {
  return `${JSON.stringify({ ...record, checksum: digest(JSON.stringify(record)) }, null, 1)}\n`;
}

/**
 * The undo record of one more change: of the same run it reaches back to before that run's first change.
 */
export function nextUndo(
  last: ReadUndo,
  made: Pick<UndoRecord, "run" | "what" | "isUndo" | "before" | "after" | "logs">,
): UndoRecord {
  const previous = last.state === "read" ? last.record : null;
  const frame = { format: "tallywatt/undo", version: 1, change: (previous?.change ?? 0) + 1 } as const;
  if (previous === null || previous.run !== made.run) return { ...frame, ...made };
  return {
    ...frame,
    run: made.run,
    what: made.what,
    isUndo: made.isUndo,
    before: [...made.before.filter(({ path }) => !isIn(previous.before, path)), ...previous.before],
    after: [...previous.after.filter(({ path }) => !isIn(made.after, path)), ...made.after],
    logs: [...new Set([...previous.logs, ...made.logs])],
  };
}

function isIn(files: readonly { readonly path: string }[], path: string): boolean {
  return files.some((file) => file.path === path);
}
