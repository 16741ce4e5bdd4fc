import { dirname, join, resolve, sep } from "node:path";
import type { FileChange } from "../../season/logbook/index.ts";
import type { FileSystem } from "../disk/index.ts";
import {
  removeDurably,
  removeFile,
  sha256Of,
  syncFolder,
  TEMPORARY_SUFFIX,
  writeDurably,
  writeSynced,
} from "../disk/index.ts";

export const JOURNAL = "journal.json";

/** An unfinished change that cannot be finished: its record is damaged. */
export class JournalDamagedError extends Error {
  constructor() {
    super(`${JOURNAL} of this logbook is damaged, so nothing was changed. What to do: tallywatt verify`);
    this.name = "JournalDamagedError";
  }
}

interface Journal {
  readonly changes: readonly FileChange[];
  readonly checksum: string;
}

/**
 * Makes several small files change together. The journal file is the commit: before it stands the book
 * is as it was, once it stands the change is made even if the power goes (`recover` finishes it).
 */
export function commit(fileSystem: FileSystem, folder: string, changes: readonly FileChange[]): void {
  for (const change of changes) insideFolder(folder, change.path);
  const journal: Journal = { changes, checksum: sha256Of(JSON.stringify(changes)) };
  writeDurably(fileSystem, join(folder, JOURNAL), new TextEncoder().encode(JSON.stringify(journal)));
  apply(fileSystem, folder, changes);
}

/** Finishes a change that a crash interrupted; does nothing on a book at rest. */
export function recover(fileSystem: FileSystem, folder: string): void {
  const bytes = fileSystem.read(join(folder, JOURNAL));
  if (bytes === null) return;
  const changes = readJournal(bytes);
  if (changes === null) {
    throw new JournalDamagedError();
  }
  apply(fileSystem, folder, changes);
}

/** The changes of an unfinished change's record, for a reader that must not write; empty for one that is damaged. */
export function changesOf(journal: Uint8Array | null): readonly FileChange[] {
  return journal === null ? [] : (readJournal(journal) ?? []);
}

/** Each folder is synced once, after all its files: until then the journal can make the change again. */
function apply(fileSystem: FileSystem, folder: string, changes: readonly FileChange[]): void {
  const folders = new Set<string>();
  for (const { path, text } of changes) {
    const target = insideFolder(folder, path);
    folders.add(dirname(target));
    if (text === null) removeFile(fileSystem, target);
    else {
      fileSystem.makeFolder(dirname(target));
      writeSynced(fileSystem, target, new TextEncoder().encode(text));
    }
  }
  // The book's own folder holds the names of the others.
  for (const path of folders.add(resolve(folder))) syncFolder(fileSystem, path);
  removeDurably(fileSystem, join(folder, JOURNAL));
}

/** Makes a folder that outlasts a power loss. */
export function ensureFolder(fileSystem: FileSystem, path: string): void {
  fileSystem.makeFolder(path);
  syncFolder(fileSystem, dirname(path));
}

function readJournal(bytes: Uint8Array): readonly FileChange[] | null {
  try {
    const journal = JSON.parse(new TextDecoder().decode(bytes)) as Partial<Journal>;
    if (!Array.isArray(journal.changes)) return null;
    return sha256Of(JSON.stringify(journal.changes)) === journal.checksum ? journal.changes : null;
  } catch {
    return null;
  }
}

/** The absolute path of a file of the book; throws on a path that would leave the book's folder. */
export function insideFolder(folder: string, path: string): string {
  const root = resolve(folder);
  const target = resolve(root, path);
  if (!target.startsWith(root + sep) || target.endsWith(TEMPORARY_SUFFIX)) {
    throw new Error(`"${path}" is not a file of the logbook folder`);
  }
  return target;
}
