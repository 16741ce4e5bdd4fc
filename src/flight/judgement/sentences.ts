import { plainNumber, type Quantity, quantityText, unitText } from "../../base/quantity/index.ts";
import { capital } from "../../base/words/index.ts";
import { chargeLeftRestsOn, MEASURE_WORDS } from "../analysis/index.ts";
import { type Criterion, RESERVE_SOURCE } from "./criteria.ts";
import type { Judgement, Verdict } from "./judgement.ts";
import { mayBeBeyond, mayBePassed } from "./verdict.ts";

/** "Peak current 58.0 ± 1.2 A is within the controller's burst limit, 120 A." */
export function judgementSentence(criterion: Criterion, measured: Quantity, verdict: Verdict): string {
  const subject = capital(MEASURE_WORDS[criterion.line]);
  if (criterion.value === null) return noLimitSentence(subject, criterion.source);
  const number = `${plainNumber(criterion.value)} ${unitText(measured.unit)}`;
  const isReserve = criterion.source === RESERVE_SOURCE;
  const against =
    criterion.against === "plan" && !isReserve
      ? `the plan of ${number}${remarkOf(criterion)}`
      : `${criterion.words}, ${number}`;
  if (verdict === "not judged") return notJudgedSentence(subject, measured, against);
  const question = isReserve && (measured.value ?? 0) < 0 ? lessThanNothing(measured.why) : "";
  return `${subject} ${quantityText(measured)} ${relationWords(criterion.sense, verdict, mayBeBeyond(measured, criterion.sense, criterion.value))} ${against}${question}.`;
}

function remarkOf({ remark }: Criterion): string {
  return remark === undefined ? "" : ` (${remark})`;
}

/** A pack cannot give more than it holds: the number itself is in question, though the flight may be too long, too. */
const lessThanNothing = (why: string | undefined): string =>
  `, and less than nothing: check ${chargeLeftRestsOn(why)}`;

function relationWords(
  sense: Judgement["sense"],
  verdict: Exclude<Verdict, "not judged">,
  isMaybeBeyond: boolean,
): string {
  if (verdict === "within") return "is within";
  if (verdict === "close" && !isMaybeBeyond) return "is close to";
  const be = verdict === "close" ? "may be" : "is";
  if (sense === "around") return `${be} more than 10 % off`;
  return `${be} ${sense === "atMost" ? "above" : "below"}`;
}

/** "Clearly ", where a limit may have been passed all the same: its interval crosses the number. */
export function clearly(judgement: Judgement): string {
  return mayBePassed(judgement) ? "clearly " : "";
}

function noLimitSentence(subject: string, source: string): string {
  return `${subject} is not judged: the aircraft file gives no ${source}.`;
}

function notJudgedSentence(subject: string, measured: Quantity, against: string): string {
  const why =
    measured.value === null ? measured.why : (measured.doubt ?? measured.why ?? quantityText(measured));
  return `${subject} is not judged against ${against}: ${why}.`;
}

export const NOT_TESTED = "the motor never runs in this log, so nothing was put to the test";
export const NOT_PREDICTED = "a plan does not predict it";
