import { type BookChange, type BookKeeper, INDEX_FILE } from "../../../season/logbook/index.ts";
import { reasonOf } from "../reasonOf.ts";
import { pageSentences } from "../sentences.ts";
import { StorageError } from "./storageError.ts";

const DATABASE = "tallywatt-book";
const VERSION = 1;
/** Path to text, path to bytes, and the one mark of the book's state. */
const [TEXTS, LOGS, MARKS] = ["texts", "logs", "marks"] as const;
const STAMP = "stamp";
const NO_STAMP = "new";

/** Opens the browser's own storage. Rejects where a browser gives this page none. */
export function openDatabase(): Promise<IDBDatabase> {
  return new Promise((resolve, reject) => {
    const opening = indexedDB.open(DATABASE, VERSION);
    opening.onupgradeneeded = () => {
      for (const name of [TEXTS, LOGS, MARKS]) opening.result.createObjectStore(name);
    };
    opening.onsuccess = () => resolve(opening.result);
    opening.onerror = () => reject(opening.error);
    opening.onblocked = () => reject(new Error("another page holds an older storage open"));
  });
}

/** Keeps a book in the browser's storage: a state is swapped in one transaction, on disk when it resolves. */
export function browserKeeper(database: IDBDatabase): BookKeeper {
  return {
    load: async (stamp) => {
      const reading = database.transaction([TEXTS, MARKS]);
      const mark = await stampIn(reading);
      if (mark === stamp) return null;
      const texts = reading.objectStore(TEXTS);
      const [paths, values] = await Promise.all([
        answerTo(texts.getAllKeys()),
        answerTo<string[]>(texts.getAll()),
      ]);
      return { stamp: mark, files: new Map(paths.map((path, at) => [String(path), values[at] ?? ""])) };
    },
    commit: (stamp, change) => commit(database, stamp, change).catch(asStorageError),
    readLog: async (path) =>
      (await answerTo<Uint8Array | undefined>(database.transaction(LOGS).objectStore(LOGS).get(path))) ??
      null,
  };
}

async function commit(database: IDBDatabase, stamp: string, change: BookChange<unknown>): Promise<boolean> {
  const writing = database.transaction([TEXTS, LOGS, MARKS], "readwrite", { durability: "strict" });
  const end = endOf(writing);
  // A rejection is told by the one who awaits the end below; until then it must not count as unheard.
  end.catch(() => {});
  if ((await stampIn(writing)) !== stamp) {
    writing.abort();
    return false;
  }
  const [texts, logs] = [writing.objectStore(TEXTS), writing.objectStore(LOGS)];
  for (const { path, bytes } of change.logs) logs.put(bytes, path);
  for (const path of change.dropLogs) logs.delete(path);
  const index = change.files.length === 0 ? [] : [{ path: INDEX_FILE, text: change.index }];
  for (const { path, text } of [...change.files, ...index]) {
    if (text === null) texts.delete(path);
    else texts.put(text, path);
  }
  writing.objectStore(MARKS).put(newStamp(), STAMP);
  await end;
  return true;
}

async function stampIn(transaction: IDBTransaction): Promise<string> {
  const stamp = await answerTo<string | undefined>(transaction.objectStore(MARKS).get(STAMP));
  return stamp ?? NO_STAMP;
}

/** Never the same twice, also after the browser's data was cleared. */
function newStamp(): string {
  return crypto.getRandomValues(new Uint32Array(4)).join("-");
}

function answerTo<Result>(request: IDBRequest<Result>): Promise<Result> {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

function endOf(transaction: IDBTransaction): Promise<void> {
  return new Promise((resolve, reject) => {
    transaction.oncomplete = () => resolve();
    transaction.onabort = () => reject(transaction.error ?? new Error("the change was given up"));
  });
}

function asStorageError(error: unknown): never {
  const isFull = error instanceof DOMException && error.name === "QuotaExceededError";
  throw new StorageError(
    isFull ? pageSentences.storageFull() : pageSentences.storageFailed(reasonOf(error)),
    {
      cause: error,
    },
  );
}
