import type { Budget } from "../../aircraft/budget.ts";
import type { Facts } from "../../aircraft/facts.ts";
import type { PlanMeasure, PlanMeasures } from "../prediction/index.ts";
import { PLAN_MEASURES } from "../prediction/index.ts";
import { type Criterion, limitCriteria, planCriteria } from "./criteria.ts";
import { judge } from "./judgeFlight.ts";
import type { Judgement } from "./judgement.ts";

/** What a flight's peak stands for on the ground: full throttle on a full pack draws the most. */
const STATIC_FOR_PEAK: Readonly<Record<string, PlanMeasure>> = {
  peakCurrentA: "staticCurrentA",
  peakPowerW: "staticPowerW",
  peakRpm: "staticRpm",
};

/**
 * Holds predicted measures against the numbers planned in the aircraft file and against the limits of what is
 * fitted. Peaks are judged by the static point. The controller's continuous rating counts where it is given: a
 * climb at full throttle lasts longer than a burst.
 */
export function judgePlan(measures: PlanMeasures, facts: Facts, budget: Budget): readonly Judgement[] {
  const isPredicted = ({ line }: Criterion) => (PLAN_MEASURES as readonly string[]).includes(line);
  const limits = limitCriteria(withoutBurst(facts)).map((one) => ({
    ...one,
    line: STATIC_FOR_PEAK[one.line] ?? one.line,
  }));
  return [...planCriteria(facts, budget), ...limits]
    .filter(isPredicted)
    .filter((one) => one.value !== null || measures[one.line as PlanMeasure].value !== null)
    .map((criterion) => judge(criterion, measures));
}

function withoutBurst(facts: Facts): Facts {
  const { controller } = facts;
  return controller.continuousA === null ? facts : { ...facts, controller: { ...controller, burstA: null } };
}
