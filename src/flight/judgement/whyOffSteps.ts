import { isKnown, type KnownQuantity, type Quantity } from "../../base/quantity/index.ts";
import type { WhyOff, WhyOffFact } from "./whyOff.ts";

/** One step on the way from the planned to the measured value: from where to where, and its change. */
export interface WhyOffStep {
  readonly what: WhyOffFact | "planItself" | "rest";
  readonly from: number;
  readonly to: number;
  /** The interval of the change, counted from `from`; null at an open end. */
  readonly toLow: number | null;
  readonly toHigh: number | null;
  readonly change: KnownQuantity;
}

/** The steps in order, each beginning where the last one ended; empty where the line cannot be explained. */
export function whyOffSteps({ planned, planItself, parts, rest }: WhyOff): readonly WhyOffStep[] {
  if (!isKnown(planItself)) return [];
  const changes: readonly (readonly [WhyOffStep["what"], Quantity])[] = [
    ["planItself", negative(planItself)],
    ...parts.map(({ fact, change }) => [fact, change] as const),
    ["rest", rest],
  ];
  const steps: WhyOffStep[] = [];
  let at = planned;
  for (const [what, change] of changes) {
    if (!isKnown(change)) continue;
    const { value, low, high } = change;
    const ends = { toLow: low === null ? null : at + low, toHigh: high === null ? null : at + high };
    steps.push({ what, from: at, to: at + value, ...ends, change });
    at += value;
  }
  return steps;
}

/** The plan itself counts from the described aircraft to the plan; the way here runs back. */
function negative({ value, low, high, unit, basis }: KnownQuantity): KnownQuantity {
  return {
    value: -value,
    low: high === null ? null : -high,
    high: low === null ? null : -low,
    unit,
    basis,
  };
}
