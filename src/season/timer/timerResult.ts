import type { Facts } from "../../aircraft/facts.ts";
import { type BriefFlight, type CurrentCalibration, calibrateCurrent } from "../logbook/index.ts";
import type { NextFlight } from "./nextFlight.ts";
import { setTimer } from "./setTimer.ts";
import type { TimerSetting } from "./timerSetting.ts";

/** The JSON result of `timer`: the setting, with what the put-backs say of the current sensor. */
export interface TimerResult extends TimerSetting {
  readonly calibration: CurrentCalibration | null;
}

/** The timer from one aircraft's flights, in order, corrected by their put-backs. */
export function timerResult(entries: readonly BriefFlight[], fitted: Facts, next: NextFlight): TimerResult {
  const calibration = calibrateCurrent(entries);
  return { ...setTimer(entries, fitted, next, calibration), calibration };
}
