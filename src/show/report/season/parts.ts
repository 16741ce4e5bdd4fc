import type { LogbookEntry } from "../../../season/logbook/index.ts";
import { type TimerResult, timerResult } from "../../../season/timer/index.ts";
import { type TrendResult, trendsOf } from "../../../season/trends/index.ts";
import { type SeasonContext, seasonContext } from "./seasonInput.ts";
import type { SeasonOfAircraft } from "./seasonPage.ts";
import { timerSection } from "./timerSection.ts";
import { trendsSection } from "./trendsSection.ts";

/** The timer section of a season page by itself, for a flight of the pilot's choice. */
export function timerView(
  entries: readonly LogbookEntry[],
  aircraft: SeasonOfAircraft,
  timer: TimerResult,
): string {
  return timerSection(contextOf(entries, aircraft, timer, trendsOf(entries, aircraft.name))).text;
}

/** The trends section of a season page by itself. */
export function trendsView(
  entries: readonly LogbookEntry[],
  aircraft: SeasonOfAircraft,
  trends: TrendResult,
): string {
  const next = { pack: null, ambientC: null, reservePct: aircraft.budget.reservePct, startPct: null };
  return trendsSection(contextOf(entries, aircraft, timerResult(entries, aircraft.facts, next), trends)).text;
}

function contextOf(
  entries: readonly LogbookEntry[],
  { name, facts, budget }: SeasonOfAircraft,
  { calibration, ...timer }: TimerResult,
  trends: TrendResult,
): SeasonContext {
  const input = { aircraft: name, entries, timer, trends, facts, budget, calibration };
  return seasonContext({ ...input, release: "", flightReportLinks: null });
}
