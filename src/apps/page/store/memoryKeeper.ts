import {
  type BookFiles,
  type BookKeeper,
  type BookState,
  filesAfter,
} from "../../../season/logbook/index.ts";

/** Keeps a book for as long as the page is open. */
export function memoryKeeper(): BookKeeper {
  let changes = 0;
  let files: BookFiles = new Map();
  const logs = new Map<string, Uint8Array>();
  const state = (): BookState => ({ stamp: String(changes), files });
  return {
    load: async (stamp) => (stamp === String(changes) ? null : state()),
    commit: async (stamp, change) => {
      if (stamp !== String(changes)) return false;
      for (const { path, bytes } of change.logs) logs.set(path, bytes);
      for (const path of change.dropLogs) logs.delete(path);
      files = filesAfter(files, change);
      changes += 1;
      return true;
    },
    readLog: async (path) => logs.get(path) ?? null,
  };
}
