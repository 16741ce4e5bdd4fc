import { plainNumber } from "../../../base/quantity/index.ts";

const count = (number: number, one: string, many: string): string =>
  number === 1 ? `1 ${one}` : `${number} ${many}`;

/** Sentences of the logbook's commands. */
export const logbookSentences = {
  noHome: (): string =>
    "Your own folder is not known here, so say where the logbook lies: --book FOLDER, or set TALLYWATT_BOOK",
  notABook: (folder: string, name: string): string =>
    `${folder} holds other files (${name}) and no book.json, so it is not taken for a logbook. Name an empty folder: --book FOLDER`,
  cannotChange: (folder: string, reason: string, bytes: number): string =>
    `The logbook in ${folder} cannot be changed: ${reason} (${bytes} bytes are needed). It stays whole; nothing of it is half-written.`,
  cannotRead: (folder: string, reason: string): string =>
    `The logbook in ${folder} cannot be read: ${reason}.`,
  empty: (folder: string): string =>
    `The logbook in ${folder} holds no flight yet. To add one: tallywatt add LOG`,
  noFlightOf: (aircraft: string, names: readonly string[]): string =>
    `There is no flight of "${aircraft}" in the logbook; it holds flights of ${names.join(", ")}.`,
  noBook: (folder: string): string =>
    `There is no logbook in ${folder}, so nothing was looked at. Check --book; to begin one: tallywatt add LOG`,

  dateWrong: (text: string): string =>
    `--date is "${text}". It must be a day as YYYY-MM-DD; for example --date 2026-06-14.`,
  flownWrong: (text: string): string =>
    `--flown is "${text}". It must be minutes and seconds; for example --flown 5:40.`,
  propellerWrong: (text: string): string =>
    `--propeller is "${text}". It must be diameter x pitch in inches; for example --propeller 18x10.`,
  textWrong: (option: string, most: number): string =>
    `${option} must be one line of 1 to ${most} characters.`,
  clearWrong: (name: string, names: readonly string[]): string =>
    `--clear is "${name}". It must be one of ${names.join(", ")}.`,
  nothingToEdit: (help: string): string => `Say what to change, for example --pack A. Help: ${help}`,
  logOrWatch: (help: string): string => `Name a log or --watch FOLDER. Help: ${help}`,
  notWithWatch: (option: string): string => `${option} is for one flight and cannot go with --watch.`,
  notAFolder: (folder: string): string => `--watch is "${folder}". It must be a folder that is there.`,

  folderEmpty: (folder: string): string =>
    `${folder} holds no log (.csv, .txt, .log or .tsv). Check the folder's name.`,
  added: (flights: readonly string[], aircraft: string, log: string, isDry: boolean): string =>
    `${isDry ? "Would add" : "Added"} ${count(flights.length, "flight", "flights")} of ${aircraft} from ${log}: ${flights.join(", ")}.`,
  already: (log: string, flights: readonly string[]): string =>
    `${log} is in the logbook already as ${flights.join(", ")}; nothing was added.`,
  factsNotTaken: (command: string): string =>
    `What was said of it before stays; this call's facts were not taken in. To change them: ${command}`,
  totals: (added: number, already: number, stopped: number): string =>
    `${count(added, "flight", "flights")} added, ${count(already, "log", "logs")} there already, ${count(stopped, "log", "logs")} not added.`,
  putBackNotKept: (command: string): string =>
    `The put-back goes with the last log, which was not added: it is not kept. To keep it with the others: ${command}`,
  progress: (done: number, total: number): string => `${done} of ${total} logs`,
  watching: (folder: string): string =>
    `Watching ${folder}: each new log is added once it has stopped growing. End with Ctrl-C.`,

  /** @param undo the command that takes it back, with the logbook it was given */
  edited: (flights: readonly string[], isDry: boolean, undo: string): string =>
    isDry ? `Would change ${flights.join(", ")}.` : `Changed ${flights.join(", ")}. To take it back: ${undo}`,
  removed: (flight: string, file: string): string => `Removed ${flight} (log ${file}).`,
  wouldRemove: (flight: string, file: string): string => `Would remove ${flight} (log ${file}).`,
  removedEnd: (undo: string): string => `To take it back: ${undo}`,
  confirmRemove: (flights: readonly string[]): string =>
    `This removes ${flights.join(", ")} from the logbook. To do it, add --yes`,
  undone: (what: string, isDry: boolean, undo: string): string =>
    isDry ? `Would undo: ${what}.` : `Undone: ${what}. To make it again: ${undo}`,
  madeAgain: (what: string, isDry: boolean, undo: string): string =>
    isDry ? `Would make again: ${what}.` : `Made again: ${what}. To take it back: ${undo}`,

  rechecked: (changed: number, same: number, isDry: boolean): string =>
    `${isDry ? "A recheck would change" : "Rechecked:"} ${count(changed, "flight", "flights")}${isDry ? "" : " changed"}, ${same} as before.`,
  measureChanged: (words: string, before: string, after: string): string => `${words}: ${before} -> ${after}`,
  moreMeasures: (number: number): string =>
    `and ${count(number, "more measure", "more measures")}, see --json`,
  moreFound: (log: string, path: string): string =>
    `${log} holds another flight for this release. To add it: tallywatt add ${path}`,
  aircraftGone: (flight: string, name: string): string =>
    `${flight} stays as it was: the logbook holds no aircraft ${name}.`,

  exported: (flights: number, file: string, isDry: boolean): string =>
    `${isDry ? "Would write" : "Wrote"} ${count(flights, "flight", "flights")} to ${file}.`,
  exportEnding: (file: string): string =>
    `${file} must end in .csv, .json or .book.json (the whole logbook as one file).`,
  bookTooLarge: (megabytes: number, limit: number): string =>
    `The logs have ${plainNumber(megabytes)} MB; one file holds at most ${limit} MB. Copy the folder instead.`,
  bookFileWrong: (file: string, why: string): string => `${file} cannot be taken in: ${why}.`,
  tookIn: (flights: number, already: number, isDry: boolean): string =>
    `${isDry ? "Would take in" : "Took in"} ${count(flights, "flight", "flights")}; ${already} were there already.`,
  bookFileOther: (): string => "it is not a logbook written by tallywatt export",
  bookFileDamaged: (): string => "its checksum does not fit; use another copy",
  bookFileNewer: (): string => "a later release wrote it",

  damagedInBook: (path: string): string => `${path} of that logbook is damaged and was left out.`,

  whole: (flights: number, logs: number): string =>
    `The logbook is whole: ${count(flights, "flight", "flights")}, ${count(logs, "log", "logs")}, every checksum holds.`,
  problem: (path: string, what: string, todo: string): string => `${path}: ${what}. What to do: ${todo}.`,
  damagedCount: (number: number): string =>
    `${count(number, "file", "files")} of the logbook cannot be used. See tallywatt verify`,
};
