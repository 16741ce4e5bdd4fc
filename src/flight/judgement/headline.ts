import { isKnown, minutesAndSeconds, quantityText } from "../../base/quantity/index.ts";
import { capital, uncapital } from "../../base/words/index.ts";
import { isAtRestThroughout, isCurrentEstimated, MEASURE_WORDS, type Measures } from "../analysis/index.ts";
import { RESERVE_SOURCE } from "./criteria.ts";
import type { Judgement } from "./judgement.ts";
import { stepAfterLimit, stepAfterPlan } from "./nextSteps.ts";
import { clearly } from "./sentences.ts";
import { mayBePassed } from "./verdict.ts";

/**
 * One sentence that a pilot can act on, from the worst judgement down: a limit passed, the reserve used,
 * a plan missed, a limit near, all held, nothing to judge by. It never says more than the judgements do.
 */
export function headline(
  measures: Measures,
  kind: "flight" | "benchRun",
  isComplete: boolean,
  judgements: readonly Judgement[],
): string {
  const passed = worst(judgements, "limit", "outside");
  if (passed) return limitPassed(passed, judgements);
  const missed = judgements.filter((one) => one.against === "plan" && one.verdict === "outside");
  const near = worst(judgements.filter(mayBePassed), "limit", "close") ?? worst(judgements, "limit", "close");
  const start = opening(measures, kind, isComplete);
  if (isAtRestThroughout(measures) && judgements.length > 0) return `${start}, so nothing was judged.`;
  const reserve = missed.find(({ source }) => source === RESERVE_SOURCE);
  if (reserve) return reserveUsed(start, reserve, near);
  if (missed[0]) return planMissed(start, missed, near);
  if (near) return `${start}; no judged limit was ${clearly(near)}passed, but ${clause(near)}.`;
  return `${start}; ${quietEnd(judgements)}.`;
}

function worst(
  judgements: readonly Judgement[],
  against: Judgement["against"],
  verdict: Judgement["verdict"],
): Judgement | undefined {
  const found = judgements.filter((one) => one.against === against && one.verdict === verdict);
  return found.sort(
    (one, other) => rank(one) - rank(other) || relativeExcess(other) - relativeExcess(one),
  )[0];
}

/** What was measured leads what is foreseen of a hot day. */
function rank({ line }: Judgement): number {
  return line === "controllerHotDayPeakC" ? 1 : 0;
}

/** How far beyond (positive) or inside (negative) its number a measure lies, as a share of the number. */
function relativeExcess(judgement: Judgement): number {
  const { measured, value, sense } = judgement;
  if (measured.value === null || value === null || value === 0) return Number.NEGATIVE_INFINITY;
  const excess = (measured.value - value) / Math.abs(value);
  return sense === "atLeast" ? -excess : sense === "around" ? Math.abs(excess) : excess;
}

/** Several limits of one measure are one thing that happened; other measures beyond theirs are counted. */
function limitPassed(judgement: Judgement, judgements: readonly Judgement[]): string {
  const lines = judgements.filter(isLimitPassed).map(({ line }) => line);
  const others = new Set(lines.filter((line) => line !== judgement.line)).size;
  const more = others === 0 ? "" : ` (and ${others} more ${others === 1 ? "limit" : "limits"})`;
  return `Limit passed: ${clause(judgement)}${more}${stepWords(stepAfterLimit(judgement))}.`;
}

/** The hot day's peak is left out: it is foreseen, and it lies above whenever today's does. */
function isLimitPassed(judgement: Judgement): boolean {
  return judgement.against === "limit" && judgement.verdict === "outside" && rank(judgement) === 0;
}

function reserveUsed(start: string, reserve: Judgement, near: Judgement | undefined): string {
  const step = stepWords(stepAfterPlan(reserve));
  return `${start}; the reserve was used: ${clause(reserve)}${step}${nearWords(near)}.`;
}

function planMissed(start: string, missed: readonly Judgement[], near: Judgement | undefined): string {
  const [first, ...others] = missed.toSorted((one, other) => relativeExcess(other) - relativeExcess(one));
  if (first === undefined) return `${start}.`;
  const more = others.length === 0 ? "" : ` (and ${others.length} more)`;
  const step = stepWords(stepAfterPlan(first));
  return `${start}; the plan did not hold: ${clause(first)}${more}${step}${nearWords(near)}.`;
}

function stepWords(step: string | null): string {
  return step === null ? "" : `; ${step}`;
}

function nearWords(near: Judgement | undefined): string {
  return near ? `. Also, ${clause(near)}` : "";
}

function quietEnd(judgements: readonly Judgement[]): string {
  const judged = judgements.filter((one) => one.verdict !== "not judged");
  const open = judgements.length - judged.length;
  if (judgements.length === 0) return "no aircraft file was given, so nothing was judged";
  if (judged.length === 0) return "nothing could be judged, see why below";
  const rest = open === 0 ? "" : `; ${open} could not be judged`;
  const near = judged.filter((one) => one.verdict === "close");
  if (near.length > 0) return `${heldBut(judged.length, near)}${rest}`;
  const lines = judged.length === 1 ? "the one line" : `the ${judged.length} lines`;
  return `plan and limits held in ${lines} that could be judged${rest}`;
}

/** Lines of the plan whose interval crosses their number neither held nor failed. */
function heldBut(count: number, near: readonly Judgement[]): string {
  const names = near.map(({ line }) => MEASURE_WORDS[line]);
  const verb = names.length === 1 ? "is" : "are";
  return `plan and limits held in ${count - near.length} of ${count} lines; ${names.join(", ")} ${verb} too near the plan to tell`;
}

/** "Flew 6:12 and used 2310 ± 50 mAh", with what is known. */
function opening(measures: Measures, kind: "flight" | "benchRun", isComplete: boolean): string {
  const cut = isComplete ? "" : ", the log is cut";
  const { motorRunTimeS } = measures;
  if (kind === "benchRun" && !isKnown(motorRunTimeS)) return capital(motorRunTimeS.why);
  if (kind === "benchRun") return `Bench run${usedWords(measures, " of ")}${cut}`;
  const flown = isKnown(measures.flightTimeS)
    ? `Flew ${minutesAndSeconds(measures.flightTimeS.value)}`
    : "Flew";
  return `${flown}${usedWords(measures, " and used ")}${cut}`;
}

function usedWords(measures: Measures, joint: string): string {
  const charge = measures.chargeUsedMah;
  const estimated = isCurrentEstimated(measures) ? "an estimated " : "";
  return isKnown(charge) ? `${joint}${estimated}${quantityText(charge)}` : "";
}

function clause(judgement: Judgement): string {
  const text = judgement.text.replace(/\.$/, "");
  return uncapital(text);
}
