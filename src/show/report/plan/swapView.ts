import {
  type DisplayUnits,
  displayedQuantity,
  isKnown,
  type Quantity,
} from "../../../base/quantity/index.ts";
import { type Judgement, predictedText, restsOn, type SwapResult } from "../../../flight/judgement/index.ts";
import { PLAN_MEASURES, type PlanMeasure, sizeText } from "../../../flight/prediction/index.ts";
import { type BudgetBar, budgetScales, html, type Markup, NOTHING } from "../../charts/index.ts";
import { limitBar, shareBar } from "../budgetLines.ts";
import { carried } from "../carried.ts";
import { limitSourceWords, measureTitle } from "../measureMethods.ts";
import { verdict } from "../sections/budgetSection.ts";
import { BUDGET_LIMIT_AXIS } from "../sentences.ts";
import {
  AFTER,
  BEFORE,
  LIMITS_TITLE,
  PLAN_CAUTION,
  SWAP_KEY,
  SWAP_NOT_KNOWN,
  SWAP_OTHERS_AXIS,
  SWAP_OTHERS_TITLE,
  SWAP_TITLE,
  sameLoad,
  widened,
} from "./sentences.ts";

/** One line of a swap: both sides, and how they are drawn. */
interface SwapLine {
  readonly name: PlanMeasure;
  readonly limit: Judgement | null;
  readonly before: Quantity;
  readonly after: Quantity;
  readonly bars: readonly [BudgetBar, BudgetBar];
}

/** What a change means: its sentence, both sides of each number on one scale, and what it rests on. */
export function swapView(result: SwapResult, fullCellV: number, units: DisplayUnits): string {
  const { text, basisOf, extrapolation, ladder, inchRuleText } = result;
  const limits = limitLines(result, fullCellV);
  const others = otherLines(result, limits);
  const more = [
    ...(extrapolation.length === 0 ? [] : [widened(extrapolation)]),
    ...(ladder.length === 0 ? [] : [sameLoad(ladder.map((rung) => sizeText(rung)))]),
    ...(inchRuleText === null ? [] : [inchRuleText]),
  ];
  return html`<section aria-labelledby="swap-says"><h2 id="swap-says">${SWAP_TITLE}</h2><p class="headline">${text}</p><p class="key">${SWAP_KEY}</p>${group("swap-limits", LIMITS_TITLE, BUDGET_LIMIT_AXIS, limits, units)}${group("swap-others", SWAP_OTHERS_TITLE, SWAP_OTHERS_AXIS, others, units)}${unknowns(result)}<p class="quiet">${restsOn(basisOf)}</p>${more.map((words) => html`<p>${words}</p>`)}<p class="quiet">${PLAN_CAUTION}</p></section>`
    .text;
}

function limitLines({ judgements, before, measures }: SwapResult, fullCellV: number): readonly SwapLine[] {
  return judgements.flatMap((limit) => {
    const name = PLAN_MEASURES.find((one) => one === limit.line);
    if (name === undefined || limit.against !== "limit" || limit.value === null) return [];
    const [was, will] = [before.measures[name], measures[name]];
    const bars = [limitBar(limit, was, fullCellV), limitBar(limit, will, fullCellV)] as const;
    return isKnown(will) ? [{ name, limit, before: was, after: will, bars }] : [];
  });
}

function otherLines({ before, measures }: SwapResult, limits: readonly SwapLine[]): readonly SwapLine[] {
  const limited = new Set(limits.map(({ name }) => name));
  return PLAN_MEASURES.flatMap((name) => {
    const [was, will] = [before.measures[name], measures[name]];
    if (limited.has(name) || !isKnown(was) || !isKnown(will)) return [];
    const bars = [shareBar(was, was.value), shareBar(will, was.value)] as const;
    return [{ name, limit: null, before: was, after: will, bars }];
  });
}

function group(
  id: string,
  title: string,
  axisText: string,
  lines: readonly SwapLine[],
  units: DisplayUnits,
): Markup {
  if (lines.length === 0) return NOTHING;
  const { axis, rows } = budgetScales(lines.flatMap(({ bars }) => bars));
  const items = lines.map((line, at) =>
    lineItem(line, [rows[2 * at] ?? NOTHING, rows[2 * at + 1] ?? NOTHING], units),
  );
  return html`<div class="budget-group swap"><h3 id="${id}">${title}</h3><p class="axis-words">${axisText}</p><div class="budget-head">${axis}</div><ul class="budget-lines" aria-labelledby="${id}">${items}</ul></div>`;
}

function lineItem(
  { name, limit, before, after }: SwapLine,
  drawings: readonly [Markup, Markup],
  units: DisplayUnits,
): Markup {
  const detail = limit === null ? null : limitSourceWords(limit.source);
  const source = detail === null ? NOTHING : html`<span class="detail">${detail}</span>`;
  const side = (words: string, of: string, quantity: Quantity): Markup =>
    html`<span class="measured"><span class="quiet">${words}</span> <span${carried(`${of}${name}`, quantity)}>${predictedText(displayedQuantity(quantity, units))}</span></span>`;
  const judged = limit === null ? NOTHING : verdict(limit, false);
  return html`<li><div class="line-name"><strong>${measureTitle(name)}</strong>${source}</div><div class="line-numbers">${side(BEFORE, "before.", before)}${side(AFTER, "", after)}</div><div class="line-scale">${drawings}</div><div class="line-verdict">${judged}</div></li>`;
}

function unknowns({ measures }: SwapResult): Markup {
  const items = PLAN_MEASURES.flatMap((name) => {
    const quantity = measures[name];
    return isKnown(quantity) ? [] : [html`<li>${measureTitle(name)}: ${quantity.why}</li>`];
  });
  return items.length === 0 ? NOTHING : html`<h3>${SWAP_NOT_KNOWN}</h3><ul>${items}</ul>`;
}
