import { BOOK_FILE, newBookText, UNDO_FILE } from "./bookFormat.ts";
import { indexText, type PlacedIndex } from "./bookIndex.ts";
import type { LogbookEntry } from "./entry.ts";
import type { Digest } from "./entryText.ts";
import type { BookChange, BookFiles, FileChange, LogFile } from "./store.ts";
import { nextUndo, readUndo, type UndoRecord, undoText } from "./undo.ts";

/** What every change of a book needs from outside the core. */
export interface ChangeFrame {
  readonly digest: Digest;
  /** This release, e.g. "0.1.0". */
  readonly release: string;
  /** Names the run of the command: its changes are undone together. */
  readonly run: string;
}

export interface MadeChange {
  /** In words, for undo. */
  readonly what: string;
  readonly isUndo?: boolean;
  readonly logs: readonly LogFile[];
  readonly files: readonly FileChange[];
  /** The flights after the change. */
  readonly index: PlacedIndex;
  /** Flights whose files it replaces or deletes, as they were. */
  readonly replaced: readonly Pick<LogbookEntry, "log">[];
}

/** A change together with book.json, its undo record, the new index and the logs that nobody needs any more. */
export function bookChange<Result>(
  files: BookFiles,
  frame: ChangeFrame,
  made: MadeChange,
  result: Result,
): BookChange<Result> {
  const last = readUndo(files, frame.digest);
  const undo = nextUndo(last, undoOf(files, frame, made));
  const isNew = !files.has(BOOK_FILE);
  return {
    logs: made.logs,
    files: [
      ...(isNew ? [{ path: BOOK_FILE, text: newBookText(frame.release) }] : []),
      ...made.files,
      { path: UNDO_FILE, text: undoText(undo, frame.digest) },
    ],
    index: indexText(made.index, frame.digest),
    dropLogs: last.state === "read" ? unneeded(last.record.logs, undo, made.index) : [],
    result,
  };
}

/** A change of nothing. */
export function noChange<Result>(result: Result): BookChange<Result> {
  return { logs: [], files: [], index: null, dropLogs: [], result };
}

function undoOf(
  files: BookFiles,
  { digest, run }: ChangeFrame,
  { what, isUndo = false, files: changes, replaced }: MadeChange,
): Pick<UndoRecord, "run" | "what" | "isUndo" | "before" | "after" | "logs"> {
  return {
    run,
    what,
    isUndo,
    before: changes.map(({ path }) => ({ path, text: files.get(path) ?? null })),
    after: changes.map(({ path, text }) => ({ path, digest: text === null ? null : digest(text) })),
    logs: [...new Set(replaced.map(({ log }) => log.path))],
  };
}

/** A damaged flight may need any log, so then none is dropped. */
function unneeded(
  logs: readonly string[],
  undo: UndoRecord,
  { entries, damaged }: PlacedIndex,
): readonly string[] {
  if (damaged.length > 0 || logs.length === 0) return [];
  const needed = new Set([...undo.logs, ...entries.map(({ log }) => log.path)]);
  return logs.filter((path) => !needed.has(path));
}
