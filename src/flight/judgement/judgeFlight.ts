import type { Budget } from "../../aircraft/budget.ts";
import type { Facts } from "../../aircraft/facts.ts";
import { type Quantity, unknown } from "../../base/quantity/index.ts";
import { isAtRestThroughout, MEASURE_UNITS, type MeasureName, type Measures } from "../analysis/index.ts";
import { type Criterion, limitCriteria, planCriteria } from "./criteria.ts";
import type { Judgement } from "./judgement.ts";
import { judgementSentence, NOT_PREDICTED, NOT_TESTED } from "./sentences.ts";
import { verdictOf } from "./verdict.ts";

/** Lines of the plan that a bench run cannot fulfil: it does not fly. */
const FLIGHT_ONLY: readonly string[] = ["flightTimeS", "chargeUsedMah", "meanCurrentA", "chargeLeftPct"];

/**
 * Holds the measures of one flight against the planned budget and against the limits of what is fitted.
 * A limit that the aircraft file does not give is listed as not judged when its measure is known, so that
 * silence is never taken for a pass. Without an aircraft there is nothing to judge by.
 */
export function judgeFlight(
  measures: Measures,
  kind: "flight" | "benchRun",
  facts: Facts,
  budget: Budget,
): readonly Judgement[] {
  if (facts.name === null) return [];
  const plan = planCriteria(facts, budget).filter(
    (one) => kind === "flight" || !FLIGHT_ONLY.includes(one.line),
  );
  const limits = limitCriteria(facts).filter(
    (one) => one.value !== null || measures[one.line].value !== null,
  );
  const criteria = [...plan, ...limits];
  return isAtRestThroughout(measures)
    ? criteria.map((criterion) => judgeAtRest(criterion, measures))
    : criteria.map((criterion) => judge(criterion, measures));
}

/** A motor that never ran put nothing to the test: only a limit that is passed all the same counts. */
function judgeAtRest(criterion: Criterion, measures: Measures): Judgement {
  const judgement = judge(criterion, measures);
  const { against, value, verdict, measured } = judgement;
  if (value === null || (against === "limit" && verdict === "outside")) return judgement;
  return {
    ...judgement,
    verdict: "not judged",
    text: judgementSentence(criterion, unknown(measured.unit, NOT_TESTED), "not judged"),
  };
}

/** One criterion against the measure of its line. */
export function judge(
  criterion: Criterion,
  measures: { readonly [name in MeasureName]?: Quantity },
): Judgement {
  const measured = measures[criterion.line] ?? unknown(MEASURE_UNITS[criterion.line], NOT_PREDICTED);
  const { line, against, sense, value, source, closeMargin } = criterion;
  const verdict = value === null ? "not judged" : verdictOf(measured, sense, value, closeMargin);
  return {
    line,
    against,
    value,
    source,
    sense,
    measured,
    verdict,
    text: judgementSentence(criterion, measured, verdict),
  };
}
