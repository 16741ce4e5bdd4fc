import { toPlace } from "../../base/quantity/index.ts";
import { html, type Markup, NOTHING } from "./markup/markup.ts";
import { percentOf, percentText } from "./position.ts";
import { valueScale } from "./valueScale.ts";

/** A value with its interval and an earlier value of the same thing, all in one unit. */
export interface IntervalMark {
  readonly before: number | null;
  readonly value: number;
  readonly low: number | null;
  readonly high: number | null;
}

/** Drawings of several marks on one scale, and the words that say how far it reaches. */
export function intervalScales(
  marks: readonly (IntervalMark | null)[],
  unit: string,
): { readonly rows: readonly Markup[]; readonly words: string } {
  const known = marks.filter((mark) => mark !== null);
  if (known.length === 0) return { rows: marks.map(() => NOTHING), words: "" };
  const all = known.flatMap(({ before, value, low, high }) => [
    before ?? value,
    value,
    low ?? value,
    high ?? value,
  ]);
  const { from, to, decimals } = valueScale(Math.min(...all), Math.max(...all), false);
  const at = (value: number) => percentText(percentOf(value, from, to));
  const end = (value: number) => `${toPlace(value, -decimals)} ${unit}`;
  return {
    rows: marks.map((mark) => (mark === null ? NOTHING : drawing(mark, at))),
    words: `The scale runs from ${end(from)} to ${end(to)}.`,
  };
}

function drawing({ before, value, low, high }: IntervalMark, at: (value: number) => string): Markup {
  const first = before === null ? NOTHING : html`<circle class="shape" cx="${at(before)}" cy="10" r="5"/>`;
  const spread =
    low === null || high === null
      ? NOTHING
      : html`<line class="spread" x1="${at(low)}" x2="${at(high)}" y1="10" y2="10"/>`;
  return html`<svg class="interval-scale" aria-hidden="true" focusable="false"><line class="budget-base" x1="0" x2="100%" y1="19" y2="19"/>${spread}${first}<circle class="point" cx="${at(value)}" cy="10" r="4"/></svg>`;
}
