import { html, type Markup, NOTHING } from "./markup/markup.ts";
import { percentOf, percentText } from "./position.ts";

/** A row of a way from one value to another: a step, or one of the two ends. */
export type StepRow =
  | {
      readonly kind: "step";
      readonly from: number;
      readonly to: number;
      readonly low: number | null;
      readonly high: number | null;
    }
  | { readonly kind: "start"; readonly value: number }
  | {
      readonly kind: "end";
      readonly value: number;
      readonly low: number | null;
      readonly high: number | null;
    };

/** Room left and right of the outermost value, as a share of the span; intervals that reach further are cut. */
const ROOM = 0.3;

/** The drawings of all rows on one scale, which reaches over every value and as far beyond as intervals ask, up to a third. */
export function stepScales(rows: readonly StepRow[]): readonly Markup[] {
  const values = rows.flatMap((row) => (row.kind === "step" ? [row.from, row.to] : [row.value]));
  const ends = rows.flatMap((row) => (row.kind === "start" ? [] : [row.low, row.high]));
  const [lowest, highest] = [Math.min(...values), Math.max(...values)];
  const room = ROOM * (highest - lowest || Math.abs(highest) || 1);
  const known = ends.filter((value) => value !== null);
  const from = Math.max(lowest - room, Math.min(lowest - room / 6, ...known));
  const to = Math.min(highest + room, Math.max(highest + room / 6, ...known));
  const at = (value: number) => percentOf(value, from, to);
  return rows.map((row) => {
    const drawn =
      row.kind === "step" ? step(row, at) : row.kind === "start" ? start(row.value, at) : end(row, at);
    return html`<svg class="step-scale" aria-hidden="true" focusable="false"><line class="budget-base" x1="0" x2="100%" y1="29" y2="29"/>${drawn}</svg>`;
  });
}

type At = (value: number) => number;

/** A bar from where the last step ended, its head at where this one ends, and the interval of that end. */
function step({ from, to, low, high }: Extract<StepRow, { kind: "step" }>, at: At): Markup {
  const [left, right] = [Math.min(at(from), at(to)), Math.max(at(from), at(to))];
  const head =
    to === from
      ? NOTHING
      : html`<svg x="${percentText(at(to))}" overflow="visible"><path class="step-head" d="${to > from ? "M-6 5l6 7l-6 7" : "M6 5l-6 7l6 7"}"/></svg>`;
  return html`<line class="step-join" x1="${percentText(at(from))}" x2="${percentText(at(from))}" y1="0" y2="19"/><rect class="step-bar" x="${percentText(left)}" width="${percentText(Math.max(right - left, 0.3))}" y="7" height="10"/>${head}${spread(low, high, at, 22)}`;
}

function start(value: number, at: At): Markup {
  return html`<svg x="${percentText(at(value))}" overflow="visible"><path class="plan" d="M0 2v22M-4 2h8M-4 24h8"/></svg>`;
}

function end({ value, low, high }: Extract<StepRow, { kind: "end" }>, at: At): Markup {
  return html`<line class="step-join" x1="${percentText(at(value))}" x2="${percentText(at(value))}" y1="0" y2="8"/>${spread(low, high, at, 13)}<circle class="point" cx="${percentText(at(value))}" cy="13" r="5"/>`;
}

/** An interval; an end beyond the scale is an arrow at its edge. */
function spread(low: number | null, high: number | null, at: At, y: number): Markup {
  if (low === null || high === null) return NOTHING;
  const [left, right] = [Math.max(0, at(low)), Math.min(100, at(high))];
  const isCut = { left: at(low) < 0, right: at(high) > 100 };
  const arrows = [
    isCut.left ? html`<path class="step-cut" d="M6 ${y - 4}l-6 4l6 4"/>` : NOTHING,
    isCut.right
      ? html`<svg x="100%" overflow="visible"><path class="step-cut" d="M-6 ${y - 4}l6 4l-6 4"/></svg>`
      : NOTHING,
  ];
  return html`<line class="spread" x1="${percentText(left)}" x2="${percentText(right)}" y1="${y}" y2="${y}"/>${arrows}`;
}
