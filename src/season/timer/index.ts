export { type ChargeLimit, COVERAGE, chargeLimit } from "./chargeLimit.ts";
export type { LeftOutFlight } from "./countedFlights.ts";
export {
  type ChargeConditions,
  DEFAULT_APPROACH_S,
  FLIGHTS_FOR_APPROACH,
  FLIGHTS_FOR_FULL_TIMER,
  GO_AROUND_S,
  type LoggedLoad,
} from "./loggedLoad.ts";
export type { NextFlight } from "./nextFlight.ts";
export { fittedPropeller, flownPropeller } from "./propellerName.ts";
export { reckonedFor } from "./sentences.ts";
export { setTimer } from "./setTimer.ts";
export { type HeatConditions, temperatureLimitS } from "./temperatureLimit.ts";
export { type TimerResult, timerResult } from "./timerResult.ts";
export type { LimitName, TimerLimit, TimerSetting, TimerTerm } from "./timerSetting.ts";
export { type VoltageConditions, voltageLimitS } from "./voltageLimit.ts";
