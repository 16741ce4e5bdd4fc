import {
  type BriefFlight,
  bookSentences,
  type CurrentCalibration,
  calibrateCurrent,
  LEAST_PUT_BACKS,
  putBacksLeftOut,
} from "../../../season/logbook/index.ts";

const MOST_LISTED = 5;

/** What the put-backs say of the current sensor, as a line; null without. */
export function calibrationLine(calibration: CurrentCalibration | null): string | null {
  return calibration === null ? null : bookSentences.calibrated(calibration);
}

/** The same of the flights of one aircraft, with the put-backs that are not used and why. */
export function putBackLines(entries: readonly BriefFlight[]): readonly string[] {
  const line = calibrationLine(calibrateCurrent(entries));
  const leftOut = putBacksLeftOut(entries);
  const given = entries.filter((entry) => entry.given.putBackMah !== null).length;
  const isOneShort = line === null && given > 0 && leftOut.length === 0;
  const more = leftOut.length - MOST_LISTED;
  return [
    ...(line === null ? [] : [line]),
    ...(isOneShort ? [bookSentences.putBacksNeeded(LEAST_PUT_BACKS)] : []),
    ...leftOut.slice(0, MOST_LISTED).map(({ flight, why }) => bookSentences.putBackNotUsed(flight, why)),
    ...(more > 0 ? [bookSentences.morePutBacks(more)] : []),
  ];
}
