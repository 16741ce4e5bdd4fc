import { isKnown, type Quantity, quantityText } from "../../../base/quantity/index.ts";
import { MEASURE_NAMES, type MeasureName } from "../../../flight/analysis/index.ts";
import { html, type Markup, NOTHING } from "../../charts/index.ts";
import { carried } from "../carried.ts";
import { measureTitle } from "../measureMethods.ts";
import type { FlightContext } from "../reportInput.ts";
import { DRIVER_WORDS, durationWords, EVERYTHING_KNOWN, sampleWords, sentence } from "../sentences.ts";

/** Every measure that could be given, with how it came about. */
export function measureSection(context: FlightContext): Markup {
  const { measures } = context.flight;
  const rows = MEASURE_NAMES.filter((name) => isKnown(measures[name])).map((name) =>
    measureRow(name, measures[name], remark(context, name)),
  );
  const id = `${context.id}-numbers`;
  return html`<section aria-labelledby="${id}"><h3 id="${id}">Every number</h3><div class="scroll" role="group" tabindex="0" aria-label="All measures, table"><table class="wide-words"><thead><tr><th scope="col">Measure</th><th scope="col">Value</th><th scope="col">How it came about</th><th scope="col">Remark</th></tr></thead><tbody>${rows}</tbody></table></div></section>`;
}

/** What could not be computed, and why. */
export function unknownSection(context: FlightContext): Markup {
  const { measures } = context.flight;
  const items = MEASURE_NAMES.flatMap((name) => {
    const quantity = measures[name];
    return isKnown(quantity) ? [] : [html`<dt>${measureTitle(name)}</dt><dd>${sentence(quantity.why)}</dd>`];
  });
  const id = `${context.id}-unknown`;
  const body = items.length === 0 ? html`<p>${EVERYTHING_KNOWN}</p>` : html`<dl class="pairs">${items}</dl>`;
  return html`<section aria-labelledby="${id}"><h3 id="${id}">What could not be computed, and why</h3>${body}</section>`;
}

function measureRow(name: MeasureName, quantity: Quantity, more: string): Markup {
  if (!isKnown(quantity)) return NOTHING;
  const text = quantityText(quantity);
  const clock = quantity.unit === "s" && quantity.value >= 60 ? `, ${durationWords(quantity.value)}` : "";
  return html`<tr><th scope="row">${measureTitle(name)}</th><td class="value"${carried(name, quantity)}>${text}${clock}</td><td>${quantity.basis}</td><td>${more}</td></tr>`;
}

function remark({ flight }: FlightContext, name: MeasureName): string {
  const quantity = flight.measures[name];
  if (!isKnown(quantity)) return "";
  const { driver } =
    name === "controllerRisePerA2" ? flight.measures.controllerRisePerA2 : { driver: undefined };
  const parts = [
    quantity.sample === undefined ? "" : sampleWords(quantity.sample.atS, quantity.sample.line),
    driver === undefined ? "" : DRIVER_WORDS[driver],
    quantity.why === undefined ? "" : sentence(quantity.why),
  ];
  return parts.filter((part) => part !== "").join(" ");
}
