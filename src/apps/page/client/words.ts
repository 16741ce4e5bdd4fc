/** Every sentence of the page's own: what it asks, tells and calls its parts. */
export const clientWords = {
  ready: "Ready for a log.",
  waiting: "waiting",
  beingRead: "being read",
  reading: (file: string, at: number, of: number): string =>
    of === 1 ? `Reading ${file}.` : `Reading ${file}, ${at} of ${of}.`,
  unusable: "cannot be used, see why",
  asks: "needs an answer",
  found: (count: number, isRemembered: boolean): string =>
    `${count} ${count === 1 ? "flight or run" : "flights or runs"}${isRemembered ? ", read as you answered before" : ""}`,
  failed: (why: string): string => `could not be read: ${why}`,
  outcome: (file: string, words: string): string => `${file}: ${words}.`,
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
  keptAll: (added: number, already: number, stopped: number): string =>
    `Kept ${added} ${added === 1 ? "flight" : "flights"}${already === 0 ? "" : `; ${already} were there already`}${stopped === 0 ? "" : `; ${stopped} logs could not be kept, see beside them`}.`,
  already: (flights: readonly string[]): string => `In the logbook already, as ${flights.join(", ")}.`,
  addAgain: "Add it all the same",

  wrongNumber: (what: string): string =>
    `${what}: this is no number. Write it with a point or comma, no unit.`,
  outOfRange: (what: string, range: string): string => `${what} must be ${range}.`,
  wrongPropeller: "Write the propeller as diameter x pitch in inches, as in 18x10.",
  wrongTime: "Write the time as minutes:seconds, as in 6:12.",
  correctFirst: "Correct the marked lines first.",

  starter: "Every number here is an example. Put in your own, empty what you do not know.",
  newAircraft: "An example to start from: put in your own numbers.",
  savedAs: (file: string): string => `Saved as ${file}.`,
  keptAircraft: (name: string): string => `The aircraft file of ${name} is kept in the logbook.`,
  whenEmpty: (value: string, source: string): string => `When empty: ${value} (${source}).`,
  planWaits: "The plan waits until the marked lines are right.",

  emptyBook: "The logbook holds no flight yet. Drop a log at the place Log and keep it.",
  noBookAircraft: "The logbook holds no aircraft yet.",
  damaged: (count: number): string =>
    `${count} ${count === 1 ? "file" : "files"} of the logbook cannot be used:`,
  exported: (file: string, flights: number): string => `Saved ${file} with ${flights} flights.`,
  imported: (flights: number): string => `Took in ${flights} ${flights === 1 ? "flight" : "flights"}.`,
  importing: "Taking in the logbook.",
  removeSure: (flight: string): string => `Remove ${flight}? Undo brings it back.`,

  nothingChanged: "Nothing is changed yet: both sides are what is fitted.",
  swapNeedsAircraft: "Choose an aircraft first: a change starts from what is fitted.",
} as const;
