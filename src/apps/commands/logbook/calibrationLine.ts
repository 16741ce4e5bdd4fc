import { bookSentences, type CurrentCalibration } from "../../../season/logbook/index.ts";

/** What the put-backs say of the current sensor, as a line; null without. */
export function calibrationLine(calibration: CurrentCalibration | null): string | null {
  return calibration === null ? null : bookSentences.calibrated(calibration);
}
