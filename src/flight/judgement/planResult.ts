import type { Budget } from "../../aircraft/budget.ts";
import type { Facts } from "../../aircraft/facts.ts";
import { type ExamplePart, examplePartsLeft } from "../../aircraft/index.ts";
import { isKnown, type Quantity } from "../../base/quantity/index.ts";
import { MEASURE_WORDS } from "../analysis/index.ts";
import {
  type BasisOf,
  type KnownParts,
  mostThrustToWeight,
  type PlanConditions,
  type PlanMeasures,
  type PlanPrediction,
  predictPlan,
} from "../prediction/index.ts";
import type { Judgement } from "./judgement.ts";
import { judgePlan } from "./judgePlan.ts";
import {
  allLimitsHeld,
  exampleNumbers,
  hardlyLifts,
  limitNear,
  limitWouldPass,
  NO_MAIN_NUMBERS,
  NOTHING_PREDICTED,
  PLAN_NOT_FAULTED,
  PLANNED_NUMBERS_AGREE,
  planItself,
  predictedPart,
  sentence,
} from "./planSentences.ts";
import { mayBePassed } from "./verdict.ts";

/** The conditions a plan was made for, as shown; null where the usual of the place was taken. */
export type ShownConditions = PlanConditions;

/** What is fitted, solved: the JSON result of `plan`, format tallywatt/plan version 1. */
export interface PlanResult {
  readonly format: "tallywatt/plan";
  readonly version: 1;
  readonly aircraft: string | null;
  readonly conditions: ShownConditions;
  readonly measures: PlanMeasures;
  /** All propellers together, from published thrust coefficients. */
  readonly staticThrustN: Quantity;
  readonly judgements: readonly Judgement[];
  readonly basisOf: BasisOf;
  readonly remarks: readonly string[];
  readonly text: string;
}

/** Predicts, judges and puts into words. */
export function planResult(
  facts: Facts,
  budget: Budget,
  known: KnownParts,
  conditions: PlanConditions,
): PlanResult {
  const prediction = predictPlan(facts, known, conditions);
  const judgements = judgePlan(prediction.measures, facts, budget);
  const { measures, staticThrustN, basisOf, remarks } = prediction;
  return {
    format: "tallywatt/plan",
    version: 1,
    aircraft: facts.name,
    conditions,
    measures,
    staticThrustN,
    judgements,
    basisOf,
    remarks,
    text: planText(prediction, judgements, facts, examplePartsLeft(facts, budget)),
  };
}

/** What it rests on where nobody checked it, the static point and the minutes, the worst limit, the planned numbers. */
export function planText(
  { measures, staticThrustN }: PlanPrediction,
  judgements: readonly Judgement[],
  { flyingMassKg }: Facts,
  examples: readonly ExamplePart[],
): string {
  const shown = (["staticCurrentA", "flightTimeS"] as const).filter((name) => isKnown(measures[name]));
  const main = shown.map((name) => predictedPart(name, measures[name])).join(", ");
  const lift = flyingMassKg === null ? null : mostThrustToWeight(staticThrustN, flyingMassKg);
  return sentence([
    ...(examples.length === 0 ? [] : [exampleNumbers(examples)]),
    main === "" ? withoutMain(measures) : `predicted ${main}`,
    ...(lift !== null && lift < LEAST_THRUST_TO_WEIGHT ? [hardlyLifts(lift)] : []),
    limitText(judgements),
    ...planTexts(judgements),
  ]);
}

function withoutMain(measures: PlanMeasures): string {
  return Object.values(measures).some(isKnown) ? NO_MAIN_NUMBERS : NOTHING_PREDICTED;
}

/** Below this share of the weight hardly any model takes off (common practice, no published source). */
const LEAST_THRUST_TO_WEIGHT = 0.3;

function limitText(judgements: readonly Judgement[]): string {
  const limits = judgements.filter(({ against, verdict }) => against === "limit" && verdict !== "not judged");
  const passed = limits.filter(({ verdict }) => verdict === "outside");
  const close = limits.filter(({ verdict }) => verdict === "close");
  const near = [...close.filter(mayBePassed), ...close.filter((one) => !mayBePassed(one))];
  const [firstPassed] = passed;
  if (firstPassed !== undefined)
    return limitWouldPass(firstPassed, linesBut(passed, [firstPassed]), linesBut(near, passed));
  const [firstNear] = near;
  return firstNear === undefined
    ? allLimitsHeld(limits.length)
    : limitNear(firstNear, linesBut(near, [firstNear]));
}

/** Names of the lines that are not told already, each once. */
function linesBut(judgements: readonly Judgement[], told: readonly Judgement[]): readonly string[] {
  const names = new Set(judgements.map(({ line }) => line));
  for (const { line } of told) names.delete(line);
  return [...names].map((name) => MEASURE_WORDS[name]);
}

function planTexts(judgements: readonly Judgement[]): readonly string[] {
  const planned = judgements.filter(({ against, verdict }) => against === "plan" && verdict !== "not judged");
  const off = planned.filter(({ verdict }) => verdict === "outside");
  if (off.length > 0) return off.map(planItself);
  if (planned.length === 0) return [];
  return [planned.every(({ verdict }) => verdict === "within") ? PLANNED_NUMBERS_AGREE : PLAN_NOT_FAULTED];
}
