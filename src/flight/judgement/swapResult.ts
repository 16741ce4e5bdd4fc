import { type Budget, NO_BUDGET } from "../../aircraft/budget.ts";
import type { Facts } from "../../aircraft/facts.ts";
import { examplePartsLeft } from "../../aircraft/index.ts";
import type { Quantity } from "../../base/quantity/index.ts";
import { fitGroup, measuredShapes } from "../../physics/index.ts";
import {
  type BasisOf,
  type Change,
  equalLoadLadder,
  type InchStep,
  inchRuleRange,
  type KnownParts,
  type LadderRung,
  oneInchRule,
  type PlanConditions,
  type PlanMeasures,
  predictSwap,
  shapeOf,
} from "../prediction/index.ts";
import type { Judgement } from "./judgement.ts";
import { judgePlan } from "./judgePlan.ts";
import { planText } from "./planResult.ts";
import { inchRuleText } from "./planSentences.ts";

export interface SwapSide {
  readonly conditions: PlanConditions;
  readonly measures: PlanMeasures;
  readonly staticThrustN: Quantity;
  readonly basisOf: BasisOf;
}

/** Before and after a change: the JSON result of `swap`, format tallywatt/swap version 1. */
export interface SwapResult extends SwapSide {
  readonly format: "tallywatt/swap";
  readonly version: 1;
  readonly aircraft: string | null;
  readonly change: Change;
  /** As the aircraft file describes it; `measures` and the rest are those after the change. */
  readonly before: SwapSide;
  readonly judgements: readonly Judgement[];
  /** How far it reaches beyond logs and published data. */
  readonly extrapolation: readonly string[];
  /** Propellers of the fitted one's kind with its load. */
  readonly ladder: readonly LadderRung[];
  readonly inchRule: readonly InchStep[];
  readonly inchRuleText: string | null;
  readonly text: string;
}

/** Predicts both sides and judges the changed one against the limits (the planned numbers were made for the other). */
export function swapResult(
  facts: Facts,
  budget: Budget,
  known: KnownParts,
  conditions: { readonly before: PlanConditions; readonly after: PlanConditions },
  change: Change,
): SwapResult {
  const swap = predictSwap(facts, known, conditions, change);
  const judgements = judgePlan(swap.after.measures, swap.facts, {
    ...NO_BUDGET,
    reservePct: budget.reservePct,
  });
  const side = ({ measures, staticThrustN, basisOf }: typeof swap.after, of: PlanConditions): SwapSide => ({
    conditions: of,
    measures,
    staticThrustN,
    basisOf,
  });
  const shape = shapeOf(facts);
  const inchRule = shape === null ? [] : oneInchRule(shape);
  return {
    format: "tallywatt/swap",
    version: 1,
    aircraft: facts.name,
    change,
    before: side(swap.before, conditions.before),
    ...side(swap.after, conditions.after),
    judgements,
    extrapolation: swap.extrapolation,
    ladder: shape === null ? [] : equalLoadLadder(shape),
    inchRule,
    inchRuleText:
      shape === null
        ? null
        : inchRuleText(
            inchRule,
            fitGroup(shape.family),
            shape.diameterIn,
            inchRuleRange(shape),
            measuredShapes(shape.family),
          ),
    text: planText(swap.after, judgements, swap.facts, examplePartsLeft(facts, NO_BUDGET)),
  };
}
