export { sha256Of, sha256OfParts } from "./checksum.ts";
export type { FileState, FileSystem } from "./fileSystem.ts";
export { LockBusyError, STALE_LOCK_S } from "./lockFacts.ts";
export { nodeFileSystem } from "./nodeFileSystem.ts";
export { LeadsOutError, withinFolder } from "./withinFolder.ts";
export {
  removeDurably,
  removeFile,
  syncFolder,
  TEMPORARY_SUFFIX,
  writeDurably,
  writeQuickly,
  writeSynced,
} from "./writeDurably.ts";
