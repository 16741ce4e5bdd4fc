import type { RestsOn } from "../messages.ts";

function counted(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? "" : "s"}`;
}

function foundWords(flights: number, runs: number): string {
  const parts = [
    ...(flights === 0 ? [] : [counted(flights, "flight")]),
    ...(runs === 0 ? [] : [counted(runs, "bench run")]),
  ];
  return parts.length === 0 ? "no flight or bench run" : parts.join(", ");
}

/** Every sentence of the page's own: what it asks, tells and calls its parts. */
export const clientWords = {
  ready: "Ready for a log.",
  coreEnded: (why: string): string =>
    `The analysis answers no more after an error (${why}). Open the page again; try a smaller log.`,
  coreErred: (why: string): string =>
    `The analysis met an error (${why}) and may not have finished this. Look before you try again.`,
  notStarted: (why: string): string => `This browser cannot run the analysis: ${why}.`,
  ownFault: (why: string): string => `This page met a fault of its own: ${why}. Open it again.`,
  waiting: "waiting",
  beingRead: "being read",
  reading: (file: string, at: number, of: number): string =>
    of === 1 ? `Reading ${file}.` : `Reading ${file}, ${at} of ${of}.`,
  unusable: "cannot be used, see why",
  asks: "needs an answer",
  found: (flights: number, runs: number, isRemembered: boolean): string =>
    `${foundWords(flights, runs)}${isRemembered ? ", read as you answered before" : ""}`,
  failed: (why: string): string => `could not be read: ${why}`,
  outcome: (file: string, words: string): string => `${file}: ${words}.`,
  folderClosed: "This browser cannot open a dropped folder here. Use Choose a folder, or drop its logs.",
  noFiles: "No file came with that. Drop CSV logs, a folder of them, or an aircraft file.",

  noAircraft: "No aircraft yet: nothing is known of its plan and limits, so this log is only measured.",
  heldAgainst: (name: string): string => `Held against the plan and limits of ${name}.`,
  answerKept: (name: string): string => `The answer is kept in the aircraft file of ${name}.`,

  questionTitle: "This log needs an answer",
  columnsTitle: "How the columns are read, and how to correct it",
  readAgain: "Read again with these columns",
  leftAlone: "left alone",
  unitPlace: "unit",
  firstRows: "First rows, by column number",
  wholeLog: {
    rateHz: "Rows a second, for a log without a clock",
    cells: "Cells in series",
    polePairs: "Pole pairs of the motor",
    decimalMark: "Decimal mark",
    delimiter: "Between cells",
    dateOrder: "Dates",
  },
  asGuessed: "as guessed",

  keepTitle: "Keep in the logbook",
  keepLead: "Say what no log holds. Each line may stay empty and be filled in later.",
  keepNeedsAircraft: "Choose the aircraft first: the logbook keeps flights by aircraft.",
  keep: "Keep this log",
  keepAll: (count: number): string => `Keep all ${count} logs, same pack, air and propeller`,
  keeping: (file: string, at: number, of: number): string => `Keeping ${file}, ${at} of ${of}.`,
  kept: (flights: readonly string[]): string =>
    `Kept as ${flights.join(", ")}. Undo in the logbook takes it back.`,
  keptNoMore: "not in the logbook any more",
  keptShort: (flights: readonly string[]): string => `in the logbook as ${flights.join(", ")}`,
  keptAll: (added: number, already: number, stopped: number): string =>
    `Kept ${counted(added, "flight")}${already === 0 ? "" : `; ${already} were there already`}${stopped === 0 ? "" : `; ${counted(stopped, "log")} could not be kept, see beside ${stopped === 1 ? "it" : "them"}`}.`,
  already: (flights: readonly string[]): string => `In the logbook already, as ${flights.join(", ")}.`,
  addAgain: "Add it all the same",

  wrongNumber: (what: string): string =>
    `${what}: this is no number. Write it with a point or comma, no unit.`,
  outOfRange: (what: string, range: string): string => `${what} must be ${range}.`,
  wrongPropeller: "Write the propeller as diameter x pitch in inches, as in 18x10.",
  wrongTime: "Write the time as minutes:seconds, as in 6:12.",
  correctFirst: "Correct the marked lines first.",

  emptyAircraft: "No aircraft yet. Take in its file, or start from an example and put in your own numbers.",
  newAircraft: "An example to start from: put in your own numbers.",
  savedAs: (file: string): string => `Saved as ${file}.`,
  keptAircraft: (name: string): string => `The aircraft file of ${name} is kept in the logbook.`,
  whenEmpty: (value: string, source: string): string => `When empty: ${value} (${source}).`,
  planWaits: "The plan waits until the marked lines are right.",

  emptyBook: "The logbook holds no flight yet. Drop a log at the place Log and keep it.",
  damaged: (count: number): string => `${counted(count, "file")} of the logbook cannot be used:`,
  exported: (file: string, flights: number): string => `Saved ${file} with ${counted(flights, "flight")}.`,
  imported: (flights: number): string => `Took in ${counted(flights, "flight")}.`,
  importing: "Taking in the logbook.",
  removeSure: (flight: string): string => `Remove ${flight}? Undo brings it back.`,

  reportsAreMetric: "Reports, timer and trends are in °C, m and kg.",
  nothingChanged: "Nothing is changed yet: both sides are what is fitted.",
  predictedFrom: ({ inBook, inLogs, leftOut }: RestsOn, logs: readonly string[]): string => {
    const found = [
      ...(inBook === 0 ? [] : [`${inBook} of the logbook`]),
      ...(inLogs === 0 ? [] : [`${inLogs} of the logs on this page (${logs.join(", ")})`]),
    ];
    return found.length === 0
      ? `From the aircraft file and published ranges: no flight ${leftOut === 0 ? "is known" : "counts"}.`
      : `From the aircraft file, published ranges and measured flights: ${found.join(", ")}.`;
  },
  whoseLogs: (aircraft: string): string =>
    `No log says whose flight it is: leave out those that ${aircraft} did not fly with these parts.`,
  leaveOutLog: (file: string): string => `Leave out ${file}`,
  countLog: (file: string): string => `Count ${file} again`,
  swapNeedsAircraft: "Choose an aircraft first: a change starts from what is fitted.",
} as const;
