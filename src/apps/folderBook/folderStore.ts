import { dirname, join } from "node:path";
import type { BookChange, BookFiles, Store } from "../../season/logbook/index.ts";
import type { FileSystem } from "./fileSystem.ts";
import { commit, ensureFolder, insideFolder, recover, unfinishedChanges } from "./journal.ts";
import { withLock } from "./lock.ts";
import { removeDurably, TEMPORARY_SUFFIX, writeDurably } from "./writeDurably.ts";

/** Folders of a book whose files are small texts; "" is the book's own folder. */
const TEXT_FOLDERS = ["", "aircraft", "flights", "removed"];
const LOG_FOLDER = "logs";
const TEXT_FILE = /\.(json|txt)$/;

export interface FolderStoreOptions {
  readonly folder: string;
  readonly fileSystem: FileSystem;
  /** Called once when another program holds the lock for a noticeable time. */
  readonly onWait: (message: string) => void;
  /** Runs work under the folder's lock; tests of single file calls replace it. */
  readonly lock?: typeof withLock;
}

/** A logbook in a folder of plain files. */
export function folderStore(options: FolderStoreOptions): Store {
  const { folder, fileSystem, onWait, lock = withLock } = options;
  return {
    read: async () => readFiles(fileSystem, folder),
    readLog: async (path) => fileSystem.read(insideFolder(folder, path)),
    change: async (work) => {
      fileSystem.makeFolder(folder);
      return lock(folder, onWait, async () => {
        recover(fileSystem, folder);
        removeLeftovers(fileSystem, folder);
        const change = await work(readFiles(fileSystem, folder));
        make(fileSystem, folder, change);
        return change.result;
      });
    },
  };
}

function make(fileSystem: FileSystem, folder: string, change: BookChange<unknown>): void {
  for (const { path, bytes } of change.logs) {
    const target = insideFolder(folder, path);
    if (fileSystem.size(target) === bytes.length) continue;
    ensureFolder(fileSystem, dirname(target));
    writeDurably(fileSystem, target, bytes);
  }
  if (change.files.length > 0) commit(fileSystem, folder, change.files);
}

/** Files as they are, with a change that a crash left unfinished laid over them. */
function readFiles(fileSystem: FileSystem, folder: string): BookFiles {
  const files = new Map<string, string>();
  for (const below of TEXT_FOLDERS) {
    for (const name of fileSystem.list(join(folder, below))) {
      if (!TEXT_FILE.test(name) || name === "journal.json") continue;
      const bytes = fileSystem.read(join(folder, below, name));
      if (bytes !== null)
        files.set(below === "" ? name : `${below}/${name}`, new TextDecoder().decode(bytes));
    }
  }
  for (const { path, text } of unfinishedChanges(fileSystem, folder)) {
    if (text === null) files.delete(path);
    else files.set(path, text);
  }
  return files;
}

/** Half-written files of a program that died. */
function removeLeftovers(fileSystem: FileSystem, folder: string): void {
  for (const below of [...TEXT_FOLDERS, LOG_FOLDER]) {
    for (const name of fileSystem.list(join(folder, below))) {
      if (name.endsWith(TEMPORARY_SUFFIX)) removeDurably(fileSystem, join(folder, below, name));
    }
  }
}
