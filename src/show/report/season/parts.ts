import type { LogbookEntry } from "../../../season/logbook/index.ts";
import type { TimerSetting } from "../../../season/timer/index.ts";
import type { TrendResult } from "../../../season/trends/index.ts";
import { flightsContext } from "./seasonInput.ts";
import { timerSection } from "./timerSection.ts";
import { trendsSection } from "./trendsSection.ts";

/** The timer section of a season page by itself, for a flight of the pilot's choice. */
export function timerView(entries: readonly LogbookEntry[], timer: TimerSetting): string {
  return timerSection({ ...flightsContext(entries), timer }).text;
}

/** The trends section of a season page by itself. */
export function trendsView(entries: readonly LogbookEntry[], trends: TrendResult): string {
  return trendsSection({ ...flightsContext(entries), trends }).text;
}
