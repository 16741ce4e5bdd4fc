import { lstatSync, realpathSync } from "node:fs";
import { dirname, resolve, sep } from "node:path";
import type { FileSystem } from "./fileSystem.ts";

/** A link inside a folder leads out of it, so what lies behind is not touched. */
export class LeadsOutError extends Error {
  readonly code = "EXDEV";
  constructor(path: string) {
    super(`${path} is a link that leads out of the folder`);
    this.name = "LeadsOutError";
  }
}

/** The same file calls, but none follows a link out of `folder`: such a call throws a LeadsOutError. */
export function withinFolder(fileSystem: FileSystem, folder: string): FileSystem {
  const root = resolve(folder);
  const inside = <Result>(call: (path: string) => Result) => {
    return (path: string): Result => {
      assertInside(root, resolve(path));
      return call(path);
    };
  };
  return {
    write: (descriptor, bytes) => fileSystem.write(descriptor, bytes),
    fsync: (descriptor) => fileSystem.fsync(descriptor),
    close: (descriptor) => fileSystem.close(descriptor),
    alone: (own, onWait, work) => fileSystem.alone(own, onWait, work),
    openForWriting: inside((path) => fileSystem.openForWriting(path)),
    openForSync: inside((path) => fileSystem.openForSync(path)),
    unlink: inside((path) => fileSystem.unlink(path)),
    makeFolder: inside((path) => fileSystem.makeFolder(path)),
    read: inside((path) => fileSystem.read(path)),
    parts: inside((path) => fileSystem.parts(path)),
    list: inside((path) => fileSystem.list(path)),
    size: inside((path) => fileSystem.size(path)),
    state: inside((path) => fileSystem.state(path)),
    rename: (from, to) => {
      for (const path of [from, to]) assertInside(root, resolve(path));
      fileSystem.rename(from, to);
    },
  };
}

/** The folder itself may be a link: its owner named it. What does not exist yet is where its folder is. */
function assertInside(root: string, path: string): void {
  if (!path.startsWith(root + sep)) return;
  const real = realPath(path);
  const realRoot = realPath(root);
  if (real !== realRoot && !real.startsWith(realRoot + sep)) throw new LeadsOutError(path);
}

function realPath(path: string): string {
  try {
    return realpathSync.native(path);
  } catch (error) {
    const isMissing = error instanceof Error && "code" in error && error.code === "ENOENT";
    if (!isMissing || dirname(path) === path) throw error;
    // Writing through a link to nowhere would make a file there.
    if (lstatSync(path, { throwIfNoEntry: false }) !== undefined) throw new LeadsOutError(path);
    return realPath(dirname(path));
  }
}
