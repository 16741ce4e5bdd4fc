import { type DisplayUnits, displayedQuantity, isKnown, quantityText } from "../../../base/quantity/index.ts";
import { type PlanResult, predictedText, restsOn } from "../../../flight/judgement/index.ts";
import { PLAN_MEASURES } from "../../../flight/prediction/index.ts";
import { html, type Markup, NOTHING } from "../../charts/index.ts";
import { budgetLines } from "../budgetLines.ts";
import { carried } from "../carried.ts";
import { measureTitle } from "../measureMethods.ts";
import { budgetGroup } from "../sections/budgetSection.ts";
import { BUDGET_LIMIT_AXIS, BUDGET_PLAN_AXIS } from "../sentences.ts";
import {
  LIMITS_TITLE,
  OTHERS_TITLE,
  PLAN_CAUTION,
  PLAN_KEY,
  PLAN_TITLE,
  PLANS_TITLE,
  thrustWords,
  widened,
} from "./sentences.ts";

/** What a plan means: its sentence, bars against limits and planned numbers, the rest, and what it rests on. */
export function planView(result: PlanResult, fullCellV: number, units: DisplayUnits): string {
  const { text, judgements, basisOf, remarks } = result;
  const { limits, plans } = budgetLines(judgements, fullCellV, units);
  const key = limits.length + plans.length === 0 ? NOTHING : html`<p class="key">${PLAN_KEY}</p>`;
  const note = remarks.length === 0 ? NOTHING : html`<p>${widened(remarks)}</p>`;
  const groups = [
    budgetGroup("plan-limits", headed(LIMITS_TITLE), BUDGET_LIMIT_AXIS, limits, null),
    budgetGroup("plan-planned", headed(PLANS_TITLE), BUDGET_PLAN_AXIS, plans, null),
  ];
  return html`<section aria-labelledby="plan-says"><h2 id="plan-says">${PLAN_TITLE}</h2><p class="headline">${text}</p>${key}${groups}${others(result, units)}<p class="quiet">${restsOn(basisOf)}</p>${note}<p class="quiet">${PLAN_CAUTION}</p></section>`
    .text;
}

function headed(title: string): (id: string) => Markup {
  return (id) => html`<h3 id="${id}">${title}</h3>`;
}

/** Measures that no limit and no planned number is about. */
function others({ measures, judgements, staticThrustN }: PlanResult, units: DisplayUnits): Markup {
  const judged = new Set(judgements.filter(({ value }) => value !== null).map(({ line }) => line));
  const rest = PLAN_MEASURES.filter((name) => !judged.has(name)).map((name) => {
    const quantity = measures[name];
    return html`<li>${measureTitle(name)}: <b${carried(name, quantity)}>${predictedText(displayedQuantity(quantity, units))}</b></li>`;
  });
  const thrust = isKnown(staticThrustN)
    ? [
        html`<li>${thrustWords}: <b${carried("staticThrustN", staticThrustN)}>${quantityText(staticThrustN)}</b></li>`,
      ]
    : [];
  const items = [...rest, ...thrust];
  return items.length === 0 ? NOTHING : html`<h3>${OTHERS_TITLE}</h3><ul>${items}</ul>`;
}
