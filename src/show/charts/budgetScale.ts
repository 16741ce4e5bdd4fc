import { html, joined, type Markup, NOTHING } from "./markup/markup.ts";
import { percentText } from "./position.ts";

/**
 * One budget line on the axis that all lines share: 0 is nothing used, 1 is the limit (or the plan where
 * there is no limit). Growing shares always run towards the limit.
 */
export interface BudgetBar {
  /** Null when not known; then no bar is drawn. */
  readonly value: number | null;
  /** Ends of the interval; null is an open end. */
  readonly low: number | null;
  readonly high: number | null;
  readonly plan: number | null;
  /** A wall at 1 (a limit), or a band that the value ought to lie in (a plan). */
  readonly reference:
    | { readonly kind: "wall" }
    | { readonly kind: "band"; readonly from: number; readonly to: number };
}

/** How far the shared axis reaches: at least 1.25, at most 2, so that one wild line does not squeeze the rest. */
export function budgetReach(bars: readonly BudgetBar[]): number {
  const farthest = Math.max(
    1,
    ...bars.map((bar) => bar.high ?? bar.value ?? 0),
    ...bars.map((bar) => bar.plan ?? 0),
  );
  return Math.min(2, Math.max(1.25, farthest * 1.05));
}

/** The drawing of one line, `reach` being the share at its right edge. */
export function budgetScale(bar: BudgetBar, reach: number): Markup {
  const at = (share: number) => (100 * Math.min(Math.max(share, 0), reach)) / reach;
  const parts = [base(), reference(bar, at), interval(bar, at), plan(bar, at), point(bar, at, reach)];
  return html`<svg class="budget-scale" aria-hidden="true" focusable="false">${parts}</svg>`;
}

/** The axis above the lines: none, half and whole of the limit or plan, quarters or beyond it as there is room. */
export function budgetAxis(reach: number): Markup {
  const labels = axisShares(reach).map((share) => {
    const anchor = share === 0 ? "start" : "middle";
    const isExtra = share % 0.5 === 0 ? "" : "extra";
    return html`<text class="${isExtra}" x="${percentText((100 * share) / reach)}" y="12" text-anchor="${anchor}">${share * 100} %</text>`;
  });
  return html`<svg class="budget-axis" aria-hidden="true" focusable="false">${labels}</svg>`;
}

function axisShares(reach: number): readonly number[] {
  return reach > 1.6 ? [0, 0.5, 1, 1.5] : [0, 0.25, 0.5, 0.75, 1];
}

type At = (share: number) => number;

function base(): Markup {
  return html`<line class="budget-base" x1="0" x2="100%" y1="17" y2="17"/>`;
}

function reference(bar: BudgetBar, at: At): Markup {
  if (bar.reference.kind === "wall") {
    const x = percentText(at(1));
    const teeth = [3, 9, 15, 21, 27].map(
      (y) => html`<line class="wall teeth" x1="0" y1="${y}" x2="6" y2="${y - 3}"/>`,
    );
    return html`<line class="wall" x1="${x}" x2="${x}" y1="0" y2="34"/><svg x="${x}" overflow="visible">${teeth}</svg>`;
  }
  const from = at(bar.reference.from);
  const to = at(bar.reference.to);
  return html`<rect class="band" x="${percentText(from)}" width="${percentText(to - from)}" y="3" height="28"/>`;
}

function interval(bar: BudgetBar, at: At): Markup {
  if (bar.value === null) return NOTHING;
  const from = at(bar.low ?? 0);
  const to = bar.high === null ? 100 : at(bar.high);
  const openAt = bar.high === null ? 100 : bar.low === null ? 0 : null;
  const arrow = openAt === null ? NOTHING : openEnd(openAt);
  const style = openAt === null ? "" : " open";
  return html`<rect class="interval${style}" x="${percentText(from)}" width="${percentText(Math.max(to - from, 0.2))}" y="9" height="16"/>${arrow}`;
}

function openEnd(percent: number): Markup {
  const d = percent === 100 ? "M-8 10l8 7l-8 7z" : "M8 10l-8 7l8 7z";
  return html`<svg x="${percentText(percent)}" overflow="visible"><path class="point" d="${d}"/></svg>`;
}

function plan(bar: BudgetBar, at: At): Markup {
  if (bar.plan === null) return NOTHING;
  return html`<svg x="${percentText(at(bar.plan))}" overflow="visible"><path class="plan" d="M0 4v26M-4 4h8M-4 30h8"/></svg>`;
}

function point(bar: BudgetBar, at: At, reach: number): Markup {
  if (bar.value === null) return NOTHING;
  if (bar.value > reach) return openEnd(100);
  return html`<svg x="${percentText(at(bar.value))}" overflow="visible"><circle class="point" cx="0" cy="17" r="4"/></svg>`;
}

/** All of a group's drawings on one reach. */
export function budgetScales(bars: readonly BudgetBar[]): {
  readonly axis: Markup;
  readonly rows: readonly Markup[];
} {
  const reach = budgetReach(bars);
  return { axis: budgetAxis(reach), rows: bars.map((bar) => joined([budgetScale(bar, reach)])) };
}
