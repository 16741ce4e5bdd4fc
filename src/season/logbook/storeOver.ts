import { assertUsable, BOOK_FILE, INDEX_FILE } from "./bookFormat.ts";
import { bookSentences } from "./sentences.ts";
import type { BookChange, BookFiles, Store } from "./store.ts";

/** All small texts of a book, the index among them where it fits, and a mark that no other state of it has. */
export interface BookState {
  readonly stamp: string;
  readonly files: BookFiles;
}

/** Something that keeps a book and swaps its state for another: a browser's storage, a server. */
export interface BookKeeper {
  /** The book as it is; null when it still is the one with this stamp. */
  load(stamp: string | null): Promise<BookState | null>;
  /** Makes the whole change or none of it; false, and none, when the book has not this stamp any more. */
  commit(stamp: string, change: BookChange<unknown>): Promise<boolean>;
  readLog(path: string): Promise<Uint8Array | null>;
}

/** A change gives way to this many others before it is given up. */
const MOST_TRIES = 100;

/** Others kept changing the book for as long as this change was tried. Nothing was changed. */
export class BusyBookError extends Error {
  constructor() {
    super(bookSentences.busy());
    this.name = "BusyBookError";
  }
}

/**
 * A store that holds no lock: a change is made from the newest state and only if that is still the newest;
 * else its work runs again. So `work` must give the same for the same files.
 */
export function storeOver(keeper: BookKeeper): Store {
  let known: BookState | null = null;
  const newest = async (): Promise<BookState> => {
    known = (await keeper.load(known?.stamp ?? null)) ?? known;
    if (known === null) throw new Error("the book's keeper gave nothing");
    assertUsable(known.files.get(BOOK_FILE));
    return known;
  };
  return {
    read: async (work) => work((await newest()).files),
    readLog: (path) => keeper.readLog(path),
    change: async (work) => {
      for (let tries = 0; tries < MOST_TRIES; tries += 1) {
        const { stamp, files } = await newest();
        const change = await work(files);
        if (change.files.length === 0 && change.logs.length === 0) return change.result;
        if (await keeper.commit(stamp, change)) return change.result;
      }
      throw new BusyBookError();
    },
  };
}

/** The texts after a change, its index among them; an index that does not fit any more goes. */
export function filesAfter(files: BookFiles, { files: changes, index }: BookChange<unknown>): BookFiles {
  if (changes.length === 0) return files;
  const changed = new Map(files);
  for (const { path, text } of [...changes, { path: INDEX_FILE, text: index }]) {
    if (text === null) changed.delete(path);
    else changed.set(path, text);
  }
  return changed;
}
