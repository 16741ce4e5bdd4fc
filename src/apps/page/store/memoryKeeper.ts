import {
  type BookChange,
  type BookKeeper,
  type BookState,
  INDEX_FILE,
} from "../../../season/logbook/index.ts";

/** Keeps a book for as long as the page is open. */
export function memoryKeeper(): BookKeeper {
  let changes = 0;
  let files: ReadonlyMap<string, string> = new Map();
  const logs = new Map<string, Uint8Array>();
  const state = (): BookState => ({ stamp: String(changes), files });
  return {
    load: async (stamp) => (stamp === String(changes) ? null : state()),
    commit: async (stamp, change) => {
      if (stamp !== String(changes)) return false;
      for (const { path, bytes } of change.logs) logs.set(path, bytes);
      for (const path of change.dropLogs) logs.delete(path);
      files = changedFiles(files, change);
      changes += 1;
      return true;
    },
    readLog: async (path) => logs.get(path) ?? null,
  };
}

/** The texts after a change, its index among them; an index that does not fit any more goes. */
function changedFiles(
  files: ReadonlyMap<string, string>,
  { files: changes, index }: BookChange<unknown>,
): ReadonlyMap<string, string> {
  if (changes.length === 0) return files;
  const changed = new Map(files);
  for (const { path, text } of [...changes, { path: INDEX_FILE, text: index }]) {
    if (text === null) changed.delete(path);
    else changed.set(path, text);
  }
  return changed;
}
