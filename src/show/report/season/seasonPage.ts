import type { Budget } from "../../../aircraft/budget.ts";
import type { Facts } from "../../../aircraft/facts.ts";
import type { KeptFlight } from "../../../season/logbook/index.ts";
import { timerResult } from "../../../season/timer/index.ts";
import { trendsOf } from "../../../season/trends/index.ts";
import { seasonReport } from "./seasonReport.ts";

export interface SeasonOfAircraft {
  readonly name: string;
  readonly facts: Facts;
  readonly budget: Budget;
}

/** The season report of one aircraft's flights, in order: the same timer and trends as the commands give. */
export function seasonPage(
  entries: readonly KeptFlight[],
  { name, facts, budget }: SeasonOfAircraft,
  release: string,
  flightReportLinks: ReadonlyMap<string, string> | null,
): string {
  const next = { pack: null, ambientC: null, reservePct: budget.reservePct, startPct: null };
  const { calibration, ...timer } = timerResult(entries, facts, next);
  return seasonReport({
    aircraft: name,
    entries,
    timer,
    trends: trendsOf(entries, name),
    facts,
    budget,
    calibration,
    release,
    flightReportLinks,
  });
}
