export { CannotChangeError, type FolderStoreOptions, folderStore } from "./folderStore.ts";
export { JOURNAL, JournalDamagedError } from "./journal.ts";
export { type FolderCheck, type FolderProblem, verifyFolder } from "./verifyFolder.ts";
