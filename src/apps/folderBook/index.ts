export { sha256Of } from "./checksum.ts";
export type { FileSystem } from "./fileSystem.ts";
export { type FolderStoreOptions, folderStore } from "./folderStore.ts";
export { LockBusyError, STALE_LOCK_S } from "./lock.ts";
export { nodeFileSystem } from "./nodeFileSystem.ts";
export { writeDurably } from "./writeDurably.ts";
