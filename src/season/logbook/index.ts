export { type AddedLog, type AddTerms, addLog, type LogToAdd, NOTHING_MORE } from "./addLog.ts";
export {
  type AircraftOfBook,
  aircraftOfBook,
  type BookAircraft,
  bringIn,
  type ChosenAircraft,
  chooseAircraft,
  takenOver,
} from "./bookAircraft.ts";
export {
  assertUsable,
  BOOK_FILE,
  FLIGHT_FOLDER,
  INDEX_AS_WRITTEN,
  INDEX_FILE,
  INDEX_FRONT,
  newBookText,
  UNDO_FILE,
  UnusableBookError,
} from "./bookFormat.ts";
export {
  type BookIndex,
  type BriefIndex,
  type DamagedFile,
  frontLength,
  indexText as indexTextOf,
} from "./bookIndex.ts";
export { calibrateCurrent, LEAST_PUT_BACKS, putBacksLeftOut } from "./calibration.ts";
export type { ChangeFrame } from "./changeBook.ts";
export { type CheckedAgain, checkAgain, type JudgedBy } from "./checkAgain.ts";
export { checkAsKept } from "./checkAsKept.ts";
export type { CurrentCalibration } from "./currentCalibration.ts";
export { type EditedFlights, editFlights, type GivenChanges } from "./editFlights.ts";
export {
  type BriefFlight,
  type FlightFigures,
  type GivenFacts,
  type KeptFlight,
  type KeptLog,
  type KeptReading,
  type LogbookEntry,
  NOTHING_GIVEN,
} from "./entry.ts";
export { type Digest, entryText, type ReadEntry, readEntry } from "./entryText.ts";
export { cellText, flightsCsv } from "./exportCsv.ts";
export { dayOf, judgedFacts, propellerSize, propellerText } from "./givenFacts.ts";
export { GIVEN_RANGES, type GivenNumber } from "./givenRanges.ts";
export { foundFlights, keptFlight, keptReading, readingOptionsOf } from "./keptFlights.ts";
export { flightsOfAircraft, type ListedFlight, type ListResult, listResult } from "./listResult.ts";
export { type NamedFlight, type NamedFlights, namedFlights, whyUnknown } from "./namedFlights.ts";
export { flightIn, flightPath, flightsIn, harmlessName, logPath } from "./names.ts";
export type { OpenedBook } from "./openedBook.ts";
export { inOrderOfFlying } from "./order.ts";
export { type Added, type AddRequest, flightsOfLog, planAdd, planKeepLog } from "./planAdd.ts";
export { planKeepAircraft } from "./planKeepAircraft.ts";
export { planRemove } from "./planRemove.ts";
export { planReplace, type Replaced, type Replacement } from "./planReplace.ts";
export { planUndo, type Undone } from "./planUndo.ts";
export {
  type KeptFlights,
  keptFlightAt,
  readBriefFlights,
  readFlights,
  readKeptFlights,
} from "./readBook.ts";
export { readingToRemember } from "./readingToRemember.ts";
export { bookSentences } from "./sentences.ts";
export type { BookChange, BookFiles, FileChange, LogFile, Store } from "./store.ts";
export { type BookKeeper, type BookState, BusyBookError, filesAfter, storeOver } from "./storeOver.ts";
export { readUndo, type UndoRecord } from "./undo.ts";
export { unknownPack } from "./unknownPack.ts";
export {
  planTakeIn,
  type ReadWholeBook,
  readWholeBook,
  type TakenIn,
  textsToExport,
  type WholeBook,
  wholeBookText,
} from "./wholeBook.ts";
