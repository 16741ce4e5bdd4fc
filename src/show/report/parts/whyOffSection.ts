import { isKnown, plainNumber, quantityText, unitText } from "../../../base/quantity/index.ts";
import { FACT_WORDS, type WhyOff, type WhyOffStep, whyOffSteps } from "../../../flight/judgement/index.ts";
import { html, type Markup, NOTHING, type StepRow, stepScales } from "../../charts/index.ts";
import { carried, carriedNumber } from "../carried.ts";
import { measureTitle } from "../measureMethods.ts";
import type { FlightContext } from "../reportInput.ts";
import { sentence } from "../sentences.ts";
import { signedText, WHY_OFF } from "./partWords.ts";

/** Each planned line that did not hold: from the planned to the measured value, step by step. Nothing where all held. */
export function whyOffSection({ id, flight }: FlightContext): Markup {
  const { whyOff = [] } = flight;
  if (whyOff.length === 0) return NOTHING;
  const isStepped = whyOff.some((one) => whyOffSteps(one).length > 0);
  const key = isStepped ? html`<p class="key">${WHY_OFF.key}</p>` : NOTHING;
  return html`<section class="part" aria-labelledby="${id}-why"><h3 id="${id}-why">${WHY_OFF.title}</h3>${key}${whyOff.map((one) => lineOff(id, one))}</section>`;
}

function lineOff(id: string, one: WhyOff): Markup {
  const steps = whyOffSteps(one);
  const name = `${id}-why-${one.line}`;
  const rows = steps.length === 0 ? NOTHING : stepList(name, one, steps);
  return html`<div class="why-off"><h4 id="${name}">${measureTitle(one.line)}</h4><p>${one.text}</p>${rows}${missing(one)}</div>`;
}

function stepList(name: string, { planned, measured }: WhyOff, steps: readonly WhyOffStep[]): Markup {
  const { low, high } = isKnown(measured) ? measured : { low: null, high: null };
  const drawings = stepScales([
    { kind: "start", value: planned },
    ...steps.map(
      ({ from, to, toLow, toHigh }): StepRow => ({ kind: "step", from, to, low: toLow, high: toHigh }),
    ),
    { kind: "end", value: measured.value ?? planned, low, high },
  ]);
  const { unit } = measured;
  const texts: readonly (readonly [string, string, Markup])[] = [
    [WHY_OFF.planned, `${plainNumber(planned)} ${unitText(unit)}`, carriedNumber("planned", planned)],
    ...steps.map(({ what, change }) => [stepWords(what), signedText(change), carried(what, change)] as const),
    [WHY_OFF.measured, quantityText(measured), carried("measured", measured)],
  ];
  const items = texts.map(
    ([words, number, whole], k) =>
      html`<li><span>${words}</span><span class="number"${whole}>${number}</span><span>${drawings[k] ?? NOTHING}</span></li>`,
  );
  return html`<ol class="steps" aria-labelledby="${name}">${items}</ol>`;
}

function stepWords(what: WhyOffStep["what"]): string {
  if (what === "planItself") return WHY_OFF.planItself;
  return what === "rest" ? WHY_OFF.rest : sentence(FACT_WORDS[what]).slice(0, -1);
}

/** Facts whose part in it this log does not give. */
function missing({ parts }: WhyOff): Markup {
  const unknowns = parts.flatMap(({ fact, change }) =>
    isKnown(change) ? [] : [`${FACT_WORDS[fact]} (${change.why})`],
  );
  return unknowns.length === 0 ? NOTHING : html`<p class="quiet">${WHY_OFF.missing(unknowns)}</p>`;
}
