import { isKnown } from "../../../base/quantity/index.ts";
import type { Judgement } from "../../../flight/judgement/index.ts";
import {
  type BudgetBar,
  budgetScales,
  html,
  joined,
  type Markup,
  NOTHING,
  verdictShape,
} from "../../charts/index.ts";
import { type BudgetLine, budgetLines } from "../budgetLines.ts";
import { carried } from "../carried.ts";
import type { FlightContext } from "../reportInput.ts";
import {
  AFTER_A_LIMIT,
  BUDGET_KEY,
  BUDGET_LIMIT_AXIS,
  BUDGET_PLAN_AXIS,
  limitsPassedSentence,
  NO_BUDGET_TEXT,
  WHO_DECIDES,
} from "../sentences.ts";

/** The budget of one flight: limits first, then the plan, each group on one shared axis. */
export function budgetSection(context: FlightContext): Markup {
  const { judgements, kind } = context.flight;
  const { limits, plans, withoutReference } = budgetLines(judgements, context.facts.pack.fullCellV);
  const isBench = kind === "benchRun";
  const title = isBench ? "Go or no-go list" : "Against the limits";
  const groups = [
    budgetGroup(
      `${context.id}-limits`,
      headed(title),
      BUDGET_LIMIT_AXIS,
      limits,
      isBench ? benchSentence(judgements) : null,
    ),
    budgetGroup(`${context.id}-plan`, headed("Against the plan"), BUDGET_PLAN_AXIS, plans, null),
  ];
  const isEmpty = limits.length + plans.length === 0;
  const body = isEmpty ? html`<p>${NO_BUDGET_TEXT}</p>` : html`<p class="key">${BUDGET_KEY}</p>${groups}`;
  return html`<section class="budget" aria-labelledby="${context.id}-budget"><h3 id="${context.id}-budget">The budget</h3>${body}${withoutNumbers(withoutReference)}</section>${afterALimit(limits)}`;
}

/** Writes a title with the id that the lines below it are labelled by. */
type Heading = (id: string) => Markup;

function headed(title: string): Heading {
  return (id) => html`<h4 id="${id}">${title}</h4>`;
}

/** Lines with their bars on one shared axis, under a title. */
export function budgetGroup(
  id: string,
  heading: Heading,
  axisText: string,
  lines: readonly BudgetLine[],
  lead: string | null,
): Markup {
  if (lines.length === 0) return NOTHING;
  const bars: readonly BudgetBar[] = lines.map((line) => line.bar);
  const { axis, rows } = budgetScales(bars);
  const items = lines.map((line, index) => lineItem(line, rows[index] ?? NOTHING));
  const leading = lead === null ? NOTHING : html`<p class="lead">${lead}</p>`;
  return html`<div class="budget-group">${heading(id)}${leading}<p class="axis-words">${axisText}</p><div class="budget-head">${axis}</div><ul class="budget-lines" aria-labelledby="${id}">${items}</ul></div>`;
}

function lineItem(line: BudgetLine, drawing: Markup): Markup {
  const detail = line.detail === null ? NOTHING : html`<span class="detail">${line.detail}</span>`;
  const references = [reference("planned", line.planned), reference("limit", line.limit)];
  const reasons = line.judgements.filter((one) => one.verdict === "not judged" && isKnown(one.measured));
  const why = reasons.map((one) => html`<p class="reason">${one.text}</p>`);
  const verdicts = line.judgements.map((judgement) => verdict(judgement, line.judgements.length > 1));
  return html`<li><div class="line-name"><strong>${line.name}</strong>${detail}</div><div class="line-numbers"><span class="measured${line.isKnown ? "" : " unknown"}"${carriedMeasured(line)}>${line.measured}</span>${references}</div><div class="line-scale">${drawing}</div><div class="line-verdict">${verdicts}</div>${why}</li>`;
}

function carriedMeasured({ judgements: [first] }: BudgetLine): Markup {
  return first === undefined ? NOTHING : carried(first.line, first.measured);
}

function reference(words: string, text: string | null): Markup {
  return text === null
    ? NOTHING
    : html`<span class="reference"><span class="quiet">${words}</span> ${text}</span>`;
}

export function verdict(judgement: Judgement, isOneOfTwo: boolean): Markup {
  const against = isOneOfTwo ? html`<span class="quiet">${judgement.against}:</span> ` : NOTHING;
  return html`<span class="verdict">${verdictShape(judgement.verdict)} ${against}<b>${judgement.verdict}</b></span>`;
}

function withoutNumbers(judgements: readonly Judgement[]): Markup {
  if (judgements.length === 0) return NOTHING;
  const items = judgements.map((judgement) => html`<li>${judgement.text}</li>`);
  return html`<details class="not-judged"><summary>${judgements.length} without a number to judge by</summary><ul>${items}</ul></details>`;
}

/** A limit that the aircraft file does not give counts as not judged: silence is no pass. */
function benchSentence(judgements: readonly Judgement[]): string {
  const verdicts = judgements.filter(({ against }) => against === "limit");
  const count = (word: Judgement["verdict"]) => verdicts.filter((one) => one.verdict === word).length;
  return `${limitsPassedSentence(count("outside"), count("close"), count("not judged"))} ${WHO_DECIDES}`;
}

function afterALimit(limits: readonly BudgetLine[]): Markup {
  const isPassed = limits.some((line) =>
    line.judgements.some(({ against, verdict: word }) => against === "limit" && word === "outside"),
  );
  if (!isPassed) return NOTHING;
  const items = joined(AFTER_A_LIMIT.map((text) => html`<li>${text}</li>`));
  return html`<section class="at-once"><h3>A limit was passed: do this first</h3><ol>${items}</ol></section>`;
}
