import { dirname, join } from "node:path";
import {
  assertUsable,
  BOOK_FILE,
  type BookChange,
  type BookFiles,
  INDEX_FILE,
  type LogFile,
  type Store,
  UNDO_FILE,
} from "../../season/logbook/index.ts";
import type { FileSystem } from "../disk/index.ts";
import { removeDurably, syncFolder, TEMPORARY_SUFFIX, writeDurably } from "../disk/index.ts";
import { folderFiles, openedFolder, TEXT_FOLDERS, textOf } from "./folderFiles.ts";
import type { FolderIndex } from "./folderIndex.ts";
import { changesOf, commit, ensureFolder, insideFolder, JOURNAL, recover } from "./journal.ts";

const LOG_FOLDER = "logs";
/** Reads that met a change in the middle before a read waits for its turn. */
const MOST_READS = 20;

/** The disk failed a change. The book is as before it or, from the next command on, as after it. */
export class CannotChangeError extends Error {
  /** Bytes of the change's files. */
  readonly neededBytes: number;
  constructor(cause: unknown, neededBytes: number) {
    super(cause instanceof Error ? cause.message : String(cause), { cause });
    this.name = "CannotChangeError";
    this.neededBytes = neededBytes;
  }
}

export interface FolderStoreOptions {
  readonly folder: string;
  readonly fileSystem: FileSystem;
  /** Called once when another program holds the lock for a noticeable time. */
  readonly onWait: (message: string) => void;
}

/** A logbook in a folder of plain files. */
export function folderStore({ folder, fileSystem, onWait }: FolderStoreOptions): Store {
  const alone = <Result>(work: () => Promise<Result>): Promise<Result> =>
    fileSystem.alone(folder, onWait, work);
  return {
    read: async (work) => {
      for (let reads = 0; reads < MOST_READS; reads += 1) {
        const read = readOnce(fileSystem, folder, work);
        if (read !== null) return read.result;
        await new Promise((resolve) => setTimeout(resolve, reads));
      }
      return alone(async () => work(usableFiles(fileSystem, folder, fileSystem.read(join(folder, JOURNAL)))));
    },
    readLog: async (path) => fileSystem.read(insideFolder(folder, path)),
    change: async (work) => {
      // A folder that holds book.json was made to last before that was written.
      if (fileSystem.size(join(folder, BOOK_FILE)) === null) ensureFolder(fileSystem, folder);
      return alone(async () => {
        assertUsableFolder(fileSystem, folder);
        recover(fileSystem, folder);
        removeLeftovers(fileSystem, folder);
        const { files, index } = openedFolder(fileSystem, folder, []);
        const change = await work(files);
        try {
          make(fileSystem, folder, change, index);
        } catch (error) {
          throw new CannotChangeError(error, bytesOf(change));
        }
        return change.result;
      });
    },
  };
}

/** The result, or null when a change was made while `work` was reading. */
function readOnce<Result>(
  fileSystem: FileSystem,
  folder: string,
  work: (files: BookFiles) => Result,
): { readonly result: Result } | null {
  const journal = fileSystem.read(join(folder, JOURNAL));
  const lastChange = fileSystem.read(join(folder, UNDO_FILE));
  const isSame = (): boolean =>
    isEqual(fileSystem.read(join(folder, JOURNAL)), journal) &&
    isEqual(fileSystem.read(join(folder, UNDO_FILE)), lastChange);
  try {
    const result = work(usableFiles(fileSystem, folder, journal));
    return isSame() ? { result } : null;
  } catch (error) {
    if (isSame()) throw error;
    return null;
  }
}

/** Throws at a book that must not be touched, its unfinished change included. */
function usableFiles(fileSystem: FileSystem, folder: string, journal: Uint8Array | null): BookFiles {
  const onDisk = folderFiles(fileSystem, folder, []);
  assertUsable(onDisk.get(BOOK_FILE));
  if (journal === null) return onDisk;
  const files = folderFiles(fileSystem, folder, changesOf(journal));
  assertUsable(files.get(BOOK_FILE));
  return files;
}

/** The same, before a change: nothing is recovered into a book that must not be touched. */
function assertUsableFolder(fileSystem: FileSystem, folder: string): void {
  const bytes = fileSystem.read(join(folder, BOOK_FILE));
  assertUsable(bytes === null ? undefined : textOf(bytes));
  const changes = changesOf(fileSystem.read(join(folder, JOURNAL)));
  const changed = changes.find(({ path }) => path === BOOK_FILE);
  if (changed !== undefined) assertUsable(changed.text ?? undefined);
}

function make(fileSystem: FileSystem, folder: string, change: BookChange<unknown>, index: FolderIndex): void {
  for (const log of change.logs) keepLog(fileSystem, folder, log);
  if (change.files.length === 0) {
    if (change.logs.length > 0) syncFolder(fileSystem, folder);
    return;
  }
  // The index goes first: were it left and the flights changed, it would have to be found out.
  const withoutIndex = { path: INDEX_FILE, text: null };
  commit(fileSystem, folder, [withoutIndex, ...change.files]);
  afterwards(fileSystem, folder, change, index);
}

function bytesOf({ logs, files }: BookChange<unknown>): number {
  const texts = files.reduce((sum, { text }) => sum + Buffer.byteLength(text ?? ""), 0);
  return logs.reduce((sum, { bytes }) => sum + bytes.length, texts);
}

function keepLog(fileSystem: FileSystem, folder: string, { path, bytes }: LogFile): void {
  const target = insideFolder(folder, path);
  const there = fileSystem.size(target) === bytes.length ? fileSystem.read(target) : null;
  if (isEqual(there, bytes)) return;
  // Before anything refers to the log the book's own folder is synced, which holds the name of this one.
  fileSystem.makeFolder(dirname(target));
  writeDurably(fileSystem, target, bytes);
}

/** The change is made; what is left is a convenience and must not fail it. */
function afterwards(
  fileSystem: FileSystem,
  folder: string,
  change: BookChange<unknown>,
  index: FolderIndex,
): void {
  try {
    if (change.index !== null) index.write(change.index, change.files);
    for (const path of change.dropLogs) removeDurably(fileSystem, insideFolder(folder, path));
  } catch {
    // Without an index readers read the flights themselves; a log that stays needs room, no more.
  }
}

/** Half-written files of a program that died. */
function removeLeftovers(fileSystem: FileSystem, folder: string): void {
  for (const below of [...TEXT_FOLDERS, LOG_FOLDER]) {
    for (const name of fileSystem.list(join(folder, below))) {
      if (name.endsWith(TEMPORARY_SUFFIX)) removeDurably(fileSystem, join(folder, below, name));
    }
  }
}

function isEqual(one: Uint8Array | null, other: Uint8Array | null): boolean {
  if (one === null || other === null) return one === other;
  return Buffer.compare(one, other) === 0;
}
