export { CannotChangeError, type FolderStoreOptions, folderStore } from "./folderStore.ts";
export { JournalDamagedError } from "./journal.ts";
export { type FolderCheck, type FolderProblem, verifyFolder } from "./verifyFolder.ts";
