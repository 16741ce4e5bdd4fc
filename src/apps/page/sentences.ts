const list = (words: readonly string[]): string => words.join(", ");

/** Every sentence of the page about its book. */
export const pageSentences = {
  inFolder: (folder: string): string =>
    `The logbook is the folder ${folder}. The command line and other pages may use it at the same time.`,
  inBrowser: (isPromised: boolean): string =>
    isPromised
      ? "The logbook lives in this browser on this device, and the browser promised to keep it. Export it to have a copy."
      : "The logbook lives in this browser on this device. The browser may clear it when its disk fills or you clear its data. Export it to have a copy.",
  inPrivateWindow: (): string => "A private window forgets it when it is closed.",
  inMemory: (why: string): string =>
    `This browser keeps nothing for this page (${why}). Flights, aircraft and answers go when the page is closed: export the logbook before.`,

  removed: (flights: readonly string[]): string =>
    flights.length === 0 ? "There was nothing to remove." : `Removed ${list(flights)}. Undo brings it back.`,
  undone: (what: string): string => `Taken back: ${what}. Undo once more makes it again.`,
  madeAgain: (what: string): string => `Made again: ${what}.`,
  edited: (flights: readonly string[]): string => `Changed ${list(flights)}.`,

  bookFileOther: (file: string): string => `${file} is not a whole logbook. Nothing was taken in.`,
  bookFileNewer: (file: string): string =>
    `${file} was written by a later release. Nothing was taken in; use that release.`,
  bookFileDamaged: (file: string): string =>
    `${file} is damaged: its checksum does not fit. Nothing was taken in; use another copy.`,
  bookTooLarge: (megabytes: number): string =>
    `The logs of this logbook are larger than ${megabytes} MB, too large for one file. Copy its folder instead.`,

  storageFull: (): string =>
    "The browser has no room left for this logbook. Nothing was changed; export it, then remove flights.",
  storageFailed: (why: string): string =>
    `The browser could not keep the change (${why}). Nothing was changed; export the logbook, then open the page again.`,
  notOpen: (): string => "no logbook was opened",

  notFoundAgain: (flight: string): string => `This release does not find flight ${flight} in its log.`,
};
