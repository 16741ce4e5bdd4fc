import { plainNumber } from "../../base/quantity/index.ts";
import type { CurrentCalibration } from "./currentCalibration.ts";

const list = (words: readonly string[]): string => words.join(", ");
const several = (count: number, one: string, many: string): string =>
  count === 1 ? `1 ${one}` : `${count} ${many}`;

/** What the sentence about the current sensor needs. */
type CalibrationWords = Omit<CurrentCalibration, "leftOut">;

/** Every sentence about a logbook that a user can meet. */
export const bookSentences = {
  notJson: (): string => "it is not JSON",
  checksumWrong: (): string => "its checksum does not fit what it says",
  notAFlight: (): string => "it is not a flight of a format that this release knows",
  wrongName: (flight: string): string => `it says that it is flight ${flight}`,
  olderRelease: (): string => "this flight was analysed by an earlier release; tallywatt recheck adds it",
  newer: (version: number, release: string | null): string =>
    `This logbook has format ${version}, which this release does not know. Nothing was changed. Use release ${release ?? "of the one that wrote it"} or later.`,
  bookDamaged: (): string =>
    "book.json of this logbook is damaged, so nothing was changed. Find out more: tallywatt verify",

  whichAircraft: (names: readonly string[]): string =>
    `The logbook holds several aircraft: ${list(names)}. Say which one.`,
  noAircraft: (): string =>
    "The logbook holds no aircraft yet. Add a log with the aircraft that flew it, --aircraft FILE; to start a file: tallywatt new aircraft.json",
  aircraftUnknown: (name: string, nearest: string | null, names: readonly string[]): string =>
    names.length === 0
      ? `There is no aircraft file ${name}, and the logbook holds no aircraft. To start one: tallywatt new ${name}`
      : `There is no aircraft "${name}" in the logbook${nearest === null ? `; it holds ${list(names)}` : `. Did you mean ${nearest}?`}`,

  packUnknown: (pack: string, nearest: string | null, known: readonly string[]): string =>
    `No flight flew on pack ${pack} yet; known are ${list(known)}.${nearest === null ? "" : ` If ${nearest} is meant: --pack ${nearest}`}`,

  nothingFlew: (): string => "Nothing runs in this log, so there is no flight to add.",
  sameFlight: (flight: string): string =>
    `This looks like flight ${flight} exported again: same clock, same charge curve. To add it all the same: --again; to replace the flight, remove it first.`,
  oneTimeEach: (flights: number): string =>
    `--flown is the time of one flight, and ${flights} are named: edit each by itself.`,
  oneFlightOnly: (option: string, flights: number): string =>
    `${option} is for one flight, but this log holds ${flights}. Add it without ${option}, then: tallywatt edit FLIGHT ${option} …`,
  flightUnknown: (name: string, nearest: string | null): string =>
    nearest === null
      ? `There is no flight ${name} in the logbook. The flights: tallywatt list`
      : `There is no flight ${name} in the logbook. Did you mean ${nearest}?`,
  flightDamaged: (name: string, why: string): string =>
    `Flight ${name} cannot be used: ${why}. What to do: tallywatt verify`,
  logGone: (flight: string): string =>
    `${flight}: its log is missing, so it stays as it was. See tallywatt verify`,
  logDiffers: (flight: string): string =>
    `${flight}: its log is damaged, so it stays as it was. See tallywatt verify`,
  notFoundAgain: (flight: string, found: number): string =>
    `${flight}: this release finds ${several(found, "flight", "flights")} in its log and not this one; it stays as it was.`,
  notReadAgain: (flight: string, why: string): string => `${flight} stays as it was: ${why}`,
  changedMeanwhile: (flight: string): string =>
    `Flight ${flight} was changed by another program meanwhile. Nothing was written; try again.`,
  changedWhileChecked: (flight: string): string =>
    `${flight} was changed by another program meanwhile; it stays as that left it. To recheck it: tallywatt recheck`,
  busy: (): string => "Other programs kept changing this logbook. Nothing was changed; try again.",
  nothingToUndo: (): string => "There is no change to undo.",
  undoDamaged: (): string =>
    "The undo information is damaged, so nothing was changed. A copy of the folder from before is the way back.",
  undoOutdated: (path: string): string =>
    `${path} was changed by hand after the last change, so it stays. Nothing was undone.`,

  added: (flights: readonly string[]): string => `added ${list(flights)}`,
  edited: (flights: readonly string[]): string => `edited ${list(flights)}`,
  removed: (flights: readonly string[]): string => `removed ${list(flights)}`,
  keptAircraft: (name: string): string => `kept the aircraft file of ${name}`,
  rechecked: (count: number): string => `rechecked ${several(count, "flight", "flights")}`,
  imported: (count: number): string => `took in ${several(count, "flight", "flights")} of another logbook`,

  chargeEstimated: (): string => "its current was not logged, only estimated",
  chargeNotWhole: (): string => "its log does not hold the whole charge",
  putBackFlightMissing: (flight: string): string => `flight ${flight} of its put-back is not in the logbook`,
  startNotFull: (): string =>
    "its pack was not full at the start, so the charger put back more than was flown",
  otherScale: (scale: number, now: number): string =>
    `its current was scaled by ${plainNumber(scale)}, now by ${plainNumber(now)}; tallywatt recheck --refit brings it along`,
  putBackMisfit: (putBackMah: number, loggedMah: number): string =>
    `the put-back of ${plainNumber(putBackMah)} mAh does not fit ${plainNumber(loggedMah)} mAh logged`,
  putBackNotUsed: (flight: string, why: string): string => `The put-back of ${flight} is not used: ${why}.`,
  morePutBacks: (count: number): string => `${several(count, "more put-back", "more put-backs")} not used.`,
  putBacksNeeded: (needed: number): string =>
    `1 put-back so far; from ${needed} on they calibrate the current sensor.`,
  /** The sensor's departure in percent with its interval: low is the gain's lower end. */
  calibrated: ({ gain, low, high, putBacks, isApplied, isScattered }: CalibrationWords): string => {
    const percent = (one: number): string => Math.abs(100 * (1 - 1 / one)).toFixed(1);
    if (isScattered) {
      return `${putBacks} put-backs differ too much to calibrate the current sensor (true amps ${low.toFixed(2)} to ${high.toFixed(2)} times the logged ones). Nothing is corrected; check which flights each one charged.`;
    }
    if (!isApplied) {
      return `${putBacks} put-backs agree with the current sensor: true amps are ${low.toFixed(3)} to ${high.toFixed(3)} times the logged ones.`;
    }
    const sense = gain > 1 ? "low" : "high";
    const [least, most] = gain > 1 ? [low, high] : [high, low];
    return `${putBacks} put-backs show that the current sensor reads ${percent(gain)} % ${sense} (${percent(least)} to ${percent(most)} %); the timer corrects for it, every other figure is as logged.`;
  },

  verifyEntry: (flight: string): string =>
    `bring this file back from a copy; or tallywatt remove ${flight} --yes, then add its log again`,
  verifyLog: (): string => "add the original file again (tallywatt add LOG), or bring it back from a copy",
  logMissing: (): string => "the log is missing",
  logDamaged: (): string => "the log is not the one that was added: its digest differs",
  verifyAircraft: (): string => "mend it in an editor, or bring it back from a copy",
  verifyDiffers: (): string => "nothing after an edit of your own; else bring it back from a copy",
  aircraftLost: (name: string): string => `flights are of aircraft ${name}, which the logbook does not hold`,
  aircraftDiffers: (flight: string): string => `it says something else than flight ${flight} was judged with`,
  verifyBook: (): string =>
    'bring it back from a copy, or write {"format":"tallywatt/logbook","version":1} into it',
  verifyUndo: (): string => "nothing to do: the next change replaces it, only undo is lost",
  verifyJournal: (): string =>
    "bring the folder back from a copy; or delete this file, then tallywatt verify",
  verifyIndex: (): string => "nothing to do: the next change writes it anew",
  verifyOrphan: (): string => "nothing needs it; delete it or keep it",
  undoWrong: (): string => "the undo information is damaged",
  journalWrong: (): string => "an unfinished change is damaged",
  bookWrong: (): string => "it does not say that this is a logbook",
  indexWrong: (): string => "the index does not fit the flights",
  orphan: (): string => "no flight belongs to this log",
};
