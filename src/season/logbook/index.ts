export type { BookChange, BookFiles, FileChange, LogFile, Store } from "./store.ts";
