import type { Budget } from "../../aircraft/budget.ts";
import type { MeasureName } from "../../flight/analysis/index.ts";
import { type Judgement, judgeFlight, type Verdict } from "../../flight/judgement/index.ts";
import type { SeasonFlight } from "./place.ts";

/** The worst verdict of one kind and the lines that have it, and how many lines have no answer. */
export interface WorstVerdict {
  readonly verdict: Verdict;
  readonly lines: readonly MeasureName[];
  readonly notJudged: number;
}

export interface FlightVerdicts {
  readonly limits: WorstVerdict | null;
  readonly plan: WorstVerdict | null;
}

/** From worst to best; lines without an answer are counted beside it, so that none hides behind one that held. */
const BY_WEIGHT: readonly Verdict[] = ["outside", "close", "within", "not judged"];

/** A flight held against the limits it was flown with and against the plan as it is now. */
export function judgementsOf({ entry }: SeasonFlight, budget: Budget): readonly Judgement[] {
  return judgeFlight(entry.check.measures, entry.check.kind, entry.facts, budget);
}

/** The worst of a flight's judgements against limits and against the plan. */
export function flightVerdicts(judgements: readonly Judgement[]): FlightVerdicts {
  return { limits: worstOf(judgements, "limit"), plan: worstOf(judgements, "plan") };
}

function worstOf(judgements: readonly Judgement[], against: Judgement["against"]): WorstVerdict | null {
  // A limit that the aircraft file does not give is no line of this flight.
  const own = judgements.filter((one) => one.against === against && one.value !== null);
  const verdict = BY_WEIGHT.find((weight) => own.some((one) => one.verdict === weight));
  if (verdict === undefined) return null;
  const lines = own.filter((one) => one.verdict === verdict).map(({ line }) => line);
  const notJudged = own.filter((one) => one.verdict === "not judged").length;
  return { verdict, lines: [...new Set(lines)], notJudged };
}
