import * as fs from "node:fs";
import { filePartsOf } from "./fileParts.ts";
import type { FileSystem } from "./fileSystem.ts";

function isMissing(error: unknown): boolean {
  return error instanceof Error && "code" in error && (error.code === "ENOENT" || error.code === "ENOTDIR");
}

/** Gives null where the call says that there is no such file; any other error goes on. */
function orNull<Result>(call: () => Result): Result | null {
  try {
    return call();
  } catch (error) {
    if (isMissing(error)) return null;
    throw error;
  }
}

const NO_DESCRIPTOR = -1;

/** The machine's own disk. */
export const nodeFileSystem: FileSystem = {
  // A link that somebody planted under this name is taken away, never followed.
  openForWriting: (path) => {
    fs.rmSync(path, { force: true });
    return fs.openSync(path, "wx");
  },
  // Windows opens no folder and fsyncs only what is open for writing: there a file's own fsync must do.
  openForSync: (path) => (process.platform === "win32" ? NO_DESCRIPTOR : fs.openSync(path, "r")),
  write: (descriptor, bytes) => fs.writeSync(descriptor, bytes),
  fsync: (descriptor) => {
    if (descriptor !== NO_DESCRIPTOR) fs.fsyncSync(descriptor);
  },
  close: (descriptor) => {
    if (descriptor !== NO_DESCRIPTOR) fs.closeSync(descriptor);
  },
  rename: (from, to) => fs.renameSync(from, to),
  unlink: (path) => fs.unlinkSync(path),
  makeFolder: (path) => {
    fs.mkdirSync(path, { recursive: true });
  },
  read: (path) => orNull(() => fs.readFileSync(path)),
  parts: (path) => orNull(() => filePartsOf(path)),
  list: (path) => orNull(() => fs.readdirSync(path).sort()) ?? [],
  size: (path) => orNull(() => fs.statSync(path).size),
  state: (path) =>
    orNull(() => {
      const found = fs.statSync(path);
      return { isFolder: found.isDirectory(), size: found.size, modifiedMs: found.mtimeMs };
    }),
  alone: async (folder, onWait, work) => (await import("./lock.ts")).withLock(folder, onWait, work),
};
