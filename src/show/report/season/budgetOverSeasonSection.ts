import { plainNumber, unitText } from "../../../base/quantity/index.ts";
import type { Verdict } from "../../../flight/judgement/index.ts";
import { type BudgetOverSeason, budgetOverSeason } from "../../../season/overview/index.ts";
import { budgetScales, html, type Markup, NOTHING, verdictShape } from "../../charts/index.ts";
import { PLAN_BANDS, shareOfLimit } from "../budgetLines.ts";
import { limitSourceWords, measureTitle } from "../measureMethods.ts";
import { BUDGET_LIMIT_AXIS, BUDGET_PLAN_AXIS } from "../sentences.ts";
import { flightReference } from "./flightWords.ts";
import type { SeasonContext } from "./seasonInput.ts";
import { NOTHING_PLANNED, PLAN_KEY, PLAN_NEWEST, PLAN_TITLE, worstFlight } from "./sentences.ts";

/** Each planned line and each limit over the whole season. */
export function budgetOverSeasonSection(context: SeasonContext): Markup {
  const lines = budgetOverSeason(context.judged);
  const plans = lines.filter(({ against }) => against === "plan");
  const limits = lines.filter(({ against }) => against === "limit");
  const body =
    lines.length === 0
      ? html`<p>${NOTHING_PLANNED}</p>`
      : html`<p>${PLAN_NEWEST}</p><p class="key">${PLAN_KEY}</p>${group(context, "season-plan", "Against the plan", BUDGET_PLAN_AXIS, plans)}${group(context, "season-limits", "Against the limits", BUDGET_LIMIT_AXIS, limits)}`;
  return html`<section class="budget" aria-labelledby="plan"><h2 id="plan">${PLAN_TITLE}</h2>${body}</section>`;
}

function group(
  context: SeasonContext,
  id: string,
  title: string,
  axisText: string,
  lines: readonly BudgetOverSeason[],
): Markup {
  if (lines.length === 0) return NOTHING;
  const { axis, rows } = budgetScales(lines.map((line) => barOf(line, context.facts.pack.fullCellV)));
  const items = lines.map((line, index) => lineItem(context, line, rows[index] ?? NOTHING));
  return html`<div class="budget-group"><h3 id="${id}">${title}</h3><p class="axis-words">${axisText}</p><div class="budget-head">${axis}</div><ul class="budget-lines" aria-labelledby="${id}">${items}</ul></div>`;
}

function barOf(line: BudgetOverSeason, fullCellV: number) {
  const { value, sense, against, lowest, highest, median } = line;
  const isPlan = against === "plan";
  const share = isPlan ? (one: number) => one / value : shareOfLimit(line, fullCellV);
  const ends =
    lowest === null || highest === null
      ? [null, null]
      : [share(lowest), share(highest)].sort((a, b) => a - b);
  return {
    value: median === null ? null : share(median),
    low: ends[0] ?? null,
    high: ends[1] ?? null,
    plan: isPlan ? 1 : null,
    reference: isPlan ? ({ kind: "band", ...PLAN_BANDS[sense] } as const) : ({ kind: "wall" } as const),
  };
}

function lineItem({ flights }: SeasonContext, line: BudgetOverSeason, drawing: Markup): Markup {
  const { against, source, value, unit, worstPlace, sense } = line;
  const at = worstPlace === null || line.lowest === line.highest ? undefined : flights[worstPlace];
  const details = [
    ...(against === "limit" ? [limitSourceWords(source)] : []),
    ...(at === undefined ? [] : [worstFlight(sense, flightReference(at).words)]),
  ];
  const number = `${plainNumber(value)} ${unitText(unit)}`;
  const word = against === "plan" ? "planned" : "limit";
  return html`<li><div class="line-name"><strong>${measureTitle(line.line)}</strong><span class="detail">${details.join("; ")}</span></div><div class="line-numbers"><span class="measured${line.median === null ? " unknown" : ""}">${rangeText(line)}</span><span class="reference"><span class="quiet">${word}</span> ${number}</span></div><div class="line-scale">${drawing}</div><div class="line-verdict counts">${counts(line)}</div></li>`;
}

function rangeText({ lowest, median, highest, unit }: BudgetOverSeason): string {
  if (lowest === null || median === null || highest === null) return "not known in any flight";
  if (lowest === highest) return `${plainNumber(median)} ${unitText(unit)}`;
  return `${plainNumber(lowest)} to ${plainNumber(highest)}, median ${plainNumber(median)} ${unitText(unit)}`;
}

const ORDER: readonly Verdict[] = ["outside", "close", "within", "not judged"];

/** "2 outside", "11 within": each with its shape, those that occurred. */
function counts({ counts: all }: BudgetOverSeason): readonly Markup[] {
  return ORDER.filter((verdict) => all[verdict] > 0).map(
    (verdict) =>
      html`<span class="verdict">${verdictShape(verdict)} <b>${all[verdict]}</b> ${verdict}</span>`,
  );
}
