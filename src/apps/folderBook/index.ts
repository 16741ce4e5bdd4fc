export { sha256Of } from "./checksum.ts";
export type { FileState, FileSystem } from "./fileSystem.ts";
export { CannotChangeError, type FolderStoreOptions, folderStore } from "./folderStore.ts";
export { JournalDamagedError } from "./journal.ts";
export { LockBusyError, STALE_LOCK_S } from "./lockFacts.ts";
export { nodeFileSystem } from "./nodeFileSystem.ts";
export { type FolderCheck, type FolderProblem, verifyFolder } from "./verifyFolder.ts";
export { writeDurably } from "./writeDurably.ts";
