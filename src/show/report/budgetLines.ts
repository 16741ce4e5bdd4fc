import {
  type DisplayUnits,
  displayedNumber,
  displayedQuantity,
  displayedUnit,
  isKnown,
  plainNumber,
  type Quantity,
  quantityText,
  unitText,
} from "../../base/quantity/index.ts";
import type { Judgement } from "../../flight/judgement/index.ts";
import type { BudgetBar } from "../charts/index.ts";
import { limitSourceWords, measureTitle } from "./measureMethods.ts";
import { durationsWords, durationWords } from "./sentences.ts";

/** One line of the budget as it is shown: words, numbers as text, and its bar on the shared axis. */
export interface BudgetLine {
  readonly name: string;
  /** Which fact the limit is, or times as a person says them; null where nothing is to be added. */
  readonly detail: string | null;
  readonly measured: string;
  readonly isKnown: boolean;
  readonly planned: string | null;
  readonly limit: string | null;
  readonly judgements: readonly Judgement[];
  readonly bar: BudgetBar;
}

export interface BudgetLines {
  readonly limits: readonly BudgetLine[];
  readonly plans: readonly BudgetLine[];
  /** Judgements without a number to judge by. */
  readonly withoutReference: readonly Judgement[];
}

/**
 * Sorts the judgements of a flight into lines: one per limit, the plan of the same measure on its first
 * limit line, and one per plan that has no limit beside it. `fullCellV` is where a cell's room begins. Bars are the
 * same in all units: only the texts change.
 */
export function budgetLines(
  judgements: readonly Judgement[],
  fullCellV: number,
  units: DisplayUnits = "metric",
): BudgetLines {
  const withNumber = judgements.filter((judgement) => judgement.value !== null);
  const limits = withNumber.filter((judgement) => judgement.against === "limit");
  const plans = withNumber.filter((judgement) => judgement.against === "plan");
  const firstOf = (line: string) => limits.find((limit) => limit.line === line);
  return {
    limits: limits.map((limit) => {
      const plan = firstOf(limit.line) === limit ? plans.find(({ line }) => line === limit.line) : undefined;
      return limitLine(limit, plan ?? null, fullCellV, units);
    }),
    plans: plans.filter((plan) => firstOf(plan.line) === undefined).map((plan) => planLine(plan, units)),
    withoutReference: judgements.filter((judgement) => judgement.value === null),
  };
}

function limitLine(
  limit: Judgement,
  plan: Judgement | null,
  fullCellV: number,
  units: DisplayUnits,
): BudgetLine {
  const share = shareOfLimit(limit, fullCellV);
  return {
    name: measureTitle(limit.line),
    detail: limitSourceWords(limit.source),
    measured: quantityText(displayedQuantity(limit.measured, units)),
    isKnown: isKnown(limit.measured),
    planned: plan === null ? null : referenceText(plan, units),
    limit: referenceText(limit, units),
    judgements: plan === null ? [limit] : [limit, plan],
    bar: {
      ...shares(limit.measured, share),
      plan: plan === null ? null : share(plan.value ?? 0),
      reference: { kind: "wall" },
    },
  };
}

/** Any quantity of a limit's line on the limit's scale. */
export function limitBar(limit: Judgement, quantity: Quantity, fullCellV: number): BudgetBar {
  return { ...shares(quantity, shareOfLimit(limit, fullCellV)), plan: null, reference: { kind: "wall" } };
}

/** A quantity as a share of another value of the same thing, which is marked at 1. */
export function shareBar(quantity: Quantity, whole: number): BudgetBar {
  const reference = { kind: "band", from: 1, to: 1 } as const;
  return { ...shares(quantity, (value) => value / whole), plan: 1, reference };
}

function planLine(plan: Judgement, units: DisplayUnits): BudgetLine {
  const value = plan.value ?? 0;
  return {
    name: measureTitle(plan.line),
    detail: durations(plan),
    measured: quantityText(displayedQuantity(plan.measured, units)),
    isKnown: isKnown(plan.measured),
    planned: referenceText(plan, units),
    limit: null,
    judgements: [plan],
    bar: {
      ...shares(plan.measured, (measured) => measured / value),
      plan: 1,
      reference: { kind: "band", ...PLAN_BANDS[plan.sense] },
    },
  };
}

/** Where a measured value should lie, as a share of the plan. */
export const PLAN_BANDS = {
  around: { from: 0.9, to: 1.1 },
  atMost: { from: 0, to: 1 },
  atLeast: { from: 1, to: 9 },
} as const;

/**
 * A number as a share of the room up to its limit, 1 at the limit and growing towards harm. Volts of a cell
 * count down from a full cell; other lower limits count as limit over value.
 */
export function shareOfLimit(
  limit: Pick<Judgement, "line" | "sense" | "value">,
  fullCellV: number,
): (value: number) => number {
  const wall = limit.value ?? 0;
  if (limit.sense !== "atLeast") return (value) => value / wall;
  if (limit.line === "minCellV") return (value) => (fullCellV - value) / (fullCellV - wall);
  return (value) => wall / value;
}

function shares(
  quantity: Quantity,
  share: (value: number) => number,
): Pick<BudgetBar, "value" | "low" | "high"> {
  const isDrawable = quantity.value !== null && Number.isFinite(share(quantity.value));
  if (quantity.value === null || !isDrawable) return { value: null, low: null, high: null };
  const ends = [quantity.low, quantity.high].map((end) => (end === null ? null : share(end)));
  const [first = null, second = null] = ends;
  const isReversed = share(1) > share(2);
  const [low, high] = isReversed ? [second, first] : [first, second];
  return { value: share(quantity.value), low, high };
}

/** From here on seconds are also said as minutes and seconds. */
const LONG_TIME_S = 100;

function durations({ measured, value }: Judgement): string | null {
  if (measured.unit !== "s" || measured.value === null || value === null || value < LONG_TIME_S) return null;
  return durationsWords(durationWords(measured.value), durationWords(value));
}

function referenceText({ value, measured }: Judgement, units: DisplayUnits): string {
  const shown = displayedNumber(value ?? 0, measured.unit, units);
  return `${plainNumber(shown)} ${unitText(displayedUnit(measured.unit, units))}`;
}
