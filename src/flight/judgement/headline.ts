import { isKnown, minutesAndSeconds, type Quantity, quantityText } from "../../base/quantity/index.ts";
import type { Measures } from "../analysis/index.ts";
import type { Judgement } from "./judgement.ts";

/** What to do first when a limit was passed, by measure; makers' limits and local rules come first. */
const FIRST_STEP: Readonly<Record<string, string>> = {
  peakCurrentA: "fit less propeller or a larger controller before the next flight",
  longestOverRatingS: "fly with less throttle or fit a larger controller",
  peakPowerW: "fit less propeller before the next flight",
  peakRpm: "stop using this propeller at this speed: a blade can be thrown",
  controllerPeakC: "let the controller cool and improve its airflow before the next flight",
  controllerHotDayPeakC: "improve the controller's airflow before summer",
  motorPeakC: "let the motor cool and fit less propeller",
  packPeakC: "let the pack cool away from anything that burns before you touch the charger",
  minCellV: "land earlier or fit a stronger pack, and check the cells before charging",
};

/**
 * One sentence that a pilot can act on, from the worst judgement down: a limit passed, a plan missed, a
 * limit near, all held, nothing to judge by. It never says more than the judgements do.
 */
export function headline(
  measures: Measures,
  kind: "flight" | "benchRun",
  isComplete: boolean,
  judgements: readonly Judgement[],
): string {
  const passed = worst(judgements, "limit", "outside");
  if (passed) return limitPassed(passed);
  const missed = judgements.filter((one) => one.against === "plan" && one.verdict === "outside");
  const near = worst(judgements, "limit", "close");
  const start = opening(measures, kind, isComplete);
  if (missed[0]) return planMissed(start, missed, near);
  if (near) return `${start}; no judged limit was passed, but ${clause(near)}.`;
  return `${start}; ${quietEnd(judgements)}.`;
}

function worst(
  judgements: readonly Judgement[],
  against: Judgement["against"],
  verdict: Judgement["verdict"],
): Judgement | undefined {
  const found = judgements.filter((one) => one.against === against && one.verdict === verdict);
  return found.sort((one, other) => relativeExcess(other) - relativeExcess(one))[0];
}

/** How far beyond (positive) or inside (negative) its number a measure lies, as a share of the number. */
function relativeExcess(judgement: Judgement): number {
  const { measured, value, sense } = judgement;
  if (measured.value === null || value === null || value === 0) return Number.NEGATIVE_INFINITY;
  const excess = (measured.value - value) / Math.abs(value);
  return sense === "atLeast" ? -excess : sense === "around" ? Math.abs(excess) : excess;
}

function limitPassed(judgement: Judgement): string {
  const what = clause(judgement);
  const step = FIRST_STEP[judgement.line];
  return step === undefined ? `Limit passed: ${what}.` : `Limit passed: ${what}; ${step}.`;
}

function planMissed(start: string, missed: readonly Judgement[], near: Judgement | undefined): string {
  const [first, ...others] = missed.toSorted((one, other) => relativeExcess(other) - relativeExcess(one));
  const more = others.length === 0 ? "" : ` (and ${others.length} more)`;
  const limits = near ? `, and ${clause(near)}` : "";
  return `${start}; the plan did not hold: ${first ? clause(first) : ""}${more}${limits}.`;
}

function quietEnd(judgements: readonly Judgement[]): string {
  const judged = judgements.filter((one) => one.verdict !== "not judged");
  const open = judgements.length - judged.length;
  if (judgements.length === 0) return "no aircraft file was given, so nothing was judged";
  if (judged.length === 0) return "nothing could be judged, see why below";
  const rest = open === 0 ? "" : `; ${open} could not be judged`;
  return `plan and limits held in the ${judged.length} lines that could be judged${rest}`;
}

/** "Flew 6:12 and used 2310 ± 50 mAh", with what is known. */
function opening(measures: Measures, kind: "flight" | "benchRun", isComplete: boolean): string {
  const cut = isComplete ? "" : ", the log is cut";
  if (kind === "benchRun") return `Bench run${usedWords(measures.chargeUsedMah, " of ")}${cut}`;
  const flown = isKnown(measures.flightTimeS)
    ? `Flew ${minutesAndSeconds(measures.flightTimeS.value)}`
    : "Flew";
  return `${flown}${usedWords(measures.chargeUsedMah, " and used ")}${cut}`;
}

function usedWords(charge: Quantity, joint: string): string {
  return isKnown(charge) ? `${joint}${quantityText(charge)}` : "";
}

function clause(judgement: Judgement): string {
  const text = judgement.text.replace(/\.$/, "");
  return text.charAt(0).toLowerCase() + text.slice(1);
}
