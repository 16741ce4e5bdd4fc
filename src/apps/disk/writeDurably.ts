import { dirname } from "node:path";
import type { FileSystem } from "./fileSystem.ts";

/** A file that is being written; readers never open it, recovery deletes it. */
export const TEMPORARY_SUFFIX = ".writing";

/**
 * Puts `bytes` under `path` so that after any failure or power loss the path holds the old file or the
 * new one, whole: write all bytes, check the size, fsync, rename, fsync the folder. Throws the file
 * system's error (a full disk too) and then leaves the old file.
 */
export function writeDurably(fileSystem: FileSystem, path: string, bytes: Uint8Array): void {
  writeSynced(fileSystem, path, bytes);
  syncFolder(fileSystem, dirname(path));
}

/** The same but for its folder: until that is synced a power loss may bring the old file back, whole. */
export function writeSynced(fileSystem: FileSystem, path: string, bytes: Uint8Array): void {
  replace(fileSystem, path, bytes, true);
}

/**
 * The same without waiting for the disk: after a power loss the file may be torn. For what is checked
 * when it is read and can be made again.
 */
export function writeQuickly(fileSystem: FileSystem, path: string, bytes: Uint8Array): void {
  replace(fileSystem, path, bytes, false);
}

function replace(fileSystem: FileSystem, path: string, bytes: Uint8Array, isSynced: boolean): void {
  const temporary = path + TEMPORARY_SUFFIX;
  try {
    writeWhole(fileSystem, temporary, bytes, isSynced);
    fileSystem.rename(temporary, path);
  } catch (error) {
    removeQuietly(fileSystem, temporary);
    throw error;
  }
}

/** Deletes a file for good; a file that is not there is fine. */
export function removeDurably(fileSystem: FileSystem, path: string): void {
  if (removeFile(fileSystem, path)) syncFolder(fileSystem, dirname(path));
}

/** The same but for its folder: until that is synced a power loss may bring the file back. False: it was not there. */
export function removeFile(fileSystem: FileSystem, path: string): boolean {
  if (fileSystem.size(path) === null) return false;
  fileSystem.unlink(path);
  return true;
}

function writeWhole(fileSystem: FileSystem, path: string, bytes: Uint8Array, isSynced: boolean): void {
  const descriptor = fileSystem.openForWriting(path);
  try {
    let written = 0;
    while (written < bytes.length) {
      const taken = fileSystem.write(descriptor, bytes.subarray(written));
      if (taken <= 0) throw diskError("ENOSPC", `the disk took ${written} of ${bytes.length} bytes`);
      written += taken;
    }
    if (isSynced) fileSystem.fsync(descriptor);
  } finally {
    fileSystem.close(descriptor);
  }
  const size = fileSystem.size(path);
  if (size !== bytes.length) throw diskError("EIO", `the disk kept ${size} of ${bytes.length} bytes`);
}

export function syncFolder(fileSystem: FileSystem, folder: string): void {
  const descriptor = fileSystem.openForSync(folder);
  try {
    fileSystem.fsync(descriptor);
  } finally {
    fileSystem.close(descriptor);
  }
}

function removeQuietly(fileSystem: FileSystem, path: string): void {
  try {
    fileSystem.unlink(path);
  } catch {
    // Recovery deletes it; the error that brought us here is the one to tell.
  }
}

/** Like Node's own errors of file calls. */
function diskError(code: string, message: string): Error {
  return Object.assign(new Error(message), { code });
}
