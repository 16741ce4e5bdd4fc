import { join } from "node:path";
import {
  BOOK_FILE,
  type BookFiles,
  type FileChange,
  FLIGHT_FOLDER,
  INDEX_AS_WRITTEN,
  INDEX_FILE,
  INDEX_FRONT,
  UNDO_FILE,
} from "../../season/logbook/index.ts";
import type { FileSystem } from "../disk/index.ts";
import { FolderIndex, type IndexPart } from "./folderIndex.ts";

/** Folders of a book whose files are small texts; "" is the book's own folder. */
export const TEXT_FOLDERS = ["", "aircraft", "flights"];
const PARTS_OF_INDEX: Readonly<Record<string, IndexPart>> = {
  [INDEX_FILE]: "whole",
  [INDEX_FRONT]: "front",
  [INDEX_AS_WRITTEN]: "asWritten",
};
const OWN_FILES = [BOOK_FILE, UNDO_FILE];

/**
 * The texts of a book's folder, each read when it is asked for, with a change that a crash left
 * unfinished laid over them.
 */
export function folderFiles(
  fileSystem: FileSystem,
  folder: string,
  unfinished: readonly FileChange[],
): BookFiles {
  return openedFolder(fileSystem, folder, unfinished).files;
}

/** The same with the index that was found beside them. */
export function openedFolder(
  fileSystem: FileSystem,
  folder: string,
  unfinished: readonly FileChange[],
): { readonly files: BookFiles; readonly index: FolderIndex } {
  const changes = new Map(unfinished.map(({ path, text }) => [path, text]));
  const paths = listedPaths(fileSystem, folder, changes);
  const index = new FolderIndex(fileSystem, folder, flightNames(paths));
  const texts = new Map<string, string | undefined>();
  const read = (path: string): string | undefined => {
    const part = PARTS_OF_INDEX[path];
    if (part !== undefined) return changes.size > 0 ? undefined : (index.text(part) ?? undefined);
    const changed = changes.get(path);
    if (changed !== undefined) return changed ?? undefined;
    const bytes = paths.has(path) ? fileSystem.read(join(folder, ...path.split("/"))) : null;
    return bytes === null ? undefined : textOf(bytes);
  };
  const get = (path: string): string | undefined => {
    if (!texts.has(path)) texts.set(path, read(path));
    return texts.get(path);
  };
  return { files: new LazyTexts(paths, get), index };
}

function flightNames(paths: ReadonlySet<string>): readonly string[] {
  const flights = [...paths].filter((path) => path.startsWith(FLIGHT_FOLDER));
  return flights.map((path) => path.slice(FLIGHT_FOLDER.length));
}

function listedPaths(
  fileSystem: FileSystem,
  folder: string,
  changes: ReadonlyMap<string, string | null>,
): ReadonlySet<string> {
  const paths = new Set<string>();
  for (const below of TEXT_FOLDERS) {
    for (const name of fileSystem.list(join(folder, below))) {
      const isOurs = below === "" ? OWN_FILES.includes(name) : name.endsWith(".json");
      if (isOurs) paths.add(below === "" ? name : `${below}/${name}`);
    }
  }
  for (const [path, text] of changes) {
    if (text === null) paths.delete(path);
    else paths.add(path);
  }
  return paths;
}

/** Bytes that are no UTF-8 become replacement marks: checksums and readers then find the damage. */
export function textOf(bytes: Uint8Array): string {
  return new TextDecoder("utf-8", { ignoreBOM: true }).decode(bytes);
}

/** A map whose texts are read on demand. The index is gettable but not listed: it is no content of its own. */
class LazyTexts implements BookFiles {
  readonly #paths: ReadonlySet<string>;
  readonly get: (path: string) => string | undefined;

  constructor(paths: ReadonlySet<string>, get: (path: string) => string | undefined) {
    this.#paths = paths;
    this.get = get;
  }

  get size(): number {
    return this.#paths.size;
  }

  has(path: string): boolean {
    return this.#paths.has(path);
  }

  keys(): MapIterator<string> {
    return this.#paths.keys();
  }

  *values(): MapIterator<string> {
    for (const [, text] of this) yield text;
  }

  *entries(): MapIterator<[string, string]> {
    for (const path of this.#paths) {
      const text = this.get(path);
      if (text !== undefined) yield [path, text];
    }
  }

  [Symbol.iterator](): MapIterator<[string, string]> {
    return this.entries();
  }

  forEach(callback: (text: string, path: string, map: BookFiles) => void): void {
    for (const [path, text] of this) callback(text, path, this);
  }
}
