import { isKnown, type KnownQuantity, type Quantity, quantityText } from "../../../base/quantity/index.ts";
import type { MeasureName } from "../../../flight/analysis/index.ts";
import { html, type Markup, NOTHING } from "../../charts/index.ts";
import { carried, carriedNumber } from "../carried.ts";
import { measureTitle } from "../measureMethods.ts";
import type { FlightContext } from "../reportInput.ts";
import { sentence } from "../sentences.ts";
import { NOT_KNOWN, notKnownText, partTableSummary } from "./partWords.ts";

/** One number of a section: its name, and itself with how it came about. */
export interface PartNumber {
  readonly words: string;
  /** Under which its whole number is carried: a measure's name, or one of its own. */
  readonly name: string;
  /** A quantity, or a number and its text where there is no interval. */
  readonly value: Quantity | { readonly text: string; readonly number: number };
  /** Said after it. */
  readonly remark?: string | null;
}

export interface PartTable {
  readonly name: string;
  readonly caption: string;
  readonly heads: readonly string[];
  /** First cell heads its row. */
  readonly rows: readonly (readonly string[])[];
}

export interface Part {
  readonly id: string;
  readonly title: string;
  /** What it means for the pilot, one sentence each. */
  readonly meaning: readonly string[];
  readonly figure: Markup | null;
  /** Why there is no picture. */
  readonly why: string | null;
  readonly numbers: readonly PartNumber[];
  readonly tables: readonly PartTable[];
}

/** A measure under its own name. */
export function measureNumber(
  { flight }: FlightContext,
  name: MeasureName,
  words = measureTitle(name),
  remark: string | null = null,
): PartNumber {
  return { words, name, value: flight.measures[name], remark };
}

/** A section on one part of the aircraft: what it means, the picture, the numbers beside it, the table below. */
export function partSection({ id, title, meaning, figure, why, numbers, tables }: Part): Markup {
  const lead = meaning.length === 0 ? NOTHING : html`<p class="meaning">${meaning.join(" ")}</p>`;
  const reason = why === null ? NOTHING : html`<p>${sentence(why)}</p>`;
  const list = numbers.length === 0 ? NOTHING : numberList(numbers);
  const body = figure === null ? list : html`<div class="part-body">${figure}${list}</div>`;
  return html`<section class="part" aria-labelledby="${id}"><h3 id="${id}">${title}</h3>${lead}${reason}${body}${tables.map(partTable)}</section>`;
}

/** Known numbers one by one; unknown ones of one reason together, after them. */
function numberList(numbers: readonly PartNumber[]): Markup {
  const reasons = new Map<string, string[]>();
  const items = numbers.flatMap(({ words, name, value, remark = null }) => {
    if ("text" in value) {
      return [
        numberItem(words, html`<b${carriedNumber(name, value.number)}>${value.text}</b>`, null, remark),
      ];
    }
    if (isKnown(value)) {
      const text = html`<b${carried(name, value)}>${quantityText(value)}</b>`;
      return [numberItem(words, text, howItCame(value), remark)];
    }
    reasons.set(value.why, [...(reasons.get(value.why) ?? []), words]);
    return [];
  });
  const unknowns = [...reasons].map(
    ([why, names]) => html`<div><dt>${NOT_KNOWN}</dt><dd>${notKnownText(names, why)}</dd></div>`,
  );
  return html`<dl class="part-numbers">${items}${unknowns}</dl>`;
}

function numberItem(words: string, text: Markup, how: string | null, remark: string | null): Markup {
  const more = [how, remark].flatMap((one) => (one === null ? [] : [sentence(one)])).join(" ");
  return html`<div><dt>${words}</dt><dd>${text}${more === "" ? NOTHING : html` <span class="quiet">${more}</span>`}</dd></div>`;
}

/** A bound says why it is one; other remarks of the check stand in the table of every number. */
function howItCame({ basis, bound, why }: KnownQuantity): string {
  return bound === undefined || why === undefined ? basis : `${basis}; ${why}`;
}

function partTable({ name, caption, heads, rows }: PartTable): Markup {
  const body = rows.map(
    ([head, ...cells]) =>
      html`<tr><th scope="row">${head ?? ""}</th>${cells.map((cell) => html`<td>${cell}</td>`)}</tr>`,
  );
  return html`<details class="table"><summary>${partTableSummary(name)}</summary><div class="scroll" role="group" tabindex="0" aria-label="${name}, table"><table><caption>${caption}</caption><thead><tr>${heads.map((head) => html`<th scope="col">${head}</th>`)}</tr></thead><tbody>${body}</tbody></table></div></details>`;
}
