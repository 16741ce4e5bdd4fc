export { type CurrentCalibration, calibrateCurrent } from "./calibration.ts";
export type { GivenFacts, KeptLog, LogbookEntry } from "./entry.ts";
export type { BookChange, BookFiles, FileChange, LogFile, Store } from "./store.ts";
