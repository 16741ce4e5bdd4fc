import { isKnown, type Quantity } from "../../base/quantity/index.ts";
import { MEASURE_WORDS } from "../../flight/analysis/index.ts";
import { predictedText, restsOn, type SwapResult } from "../../flight/judgement/index.ts";
import { type PlanMeasure, sizeText } from "../../flight/prediction/index.ts";
import { planSentences } from "./planSentences.ts";
import { type KnownFlights, notPredicted, sentenceCase } from "./planSummary.ts";
import { oneLine } from "./printable.ts";

/** Shown two to a line, so that before and after stand side by side within a dozen lines. */
const PAIRS: readonly (readonly PlanMeasure[])[] = [
  ["staticCurrentA", "staticRpm"],
  ["staticPowerW", "powerLoadingWPerKg"],
  ["meanCurrentA", "flightTimeS"],
  ["minCellV", "sagPerCellV", "controllerHotDayPeakC"],
];

/** At most a dozen lines; computes nothing. */
export function swapSummary(
  name: string,
  { flights, known }: KnownFlights,
  result: SwapResult,
  next: string,
): readonly string[] {
  const { ladder, inchRuleText, extrapolation, basisOf } = result;
  const rungs = ladder.map((rung) => sizeText(rung)).join(", ");
  return [
    planSentences.source(name, flights, known.leftOut.length, basisOf.airDensity),
    result.text,
    ...PAIRS.map((pair) => pair.filter((one) => isKnownOnASide(one, result)))
      .filter((pair) => pair.length > 0)
      .map((pair) => sentenceCase(pair.map((one) => sideBySide(one, result)).join("; "))),
    ...notPredicted(
      PAIRS.flat().filter((one) => !isKnownOnASide(one, result)),
      result.measures,
    ),
    planSentences.thrust(fromTo(result.before.staticThrustN, result.staticThrustN)),
    restsOn(basisOf),
    ...(extrapolation.length === 0 ? [] : [planSentences.widened(extrapolation)]),
    ...(rungs === "" ? [] : [planSentences.ladder(rungs)]),
    ...(inchRuleText === null ? [] : [inchRuleText]),
    `Next: ${next}`,
  ].map(oneLine);
}

/** "static current 45.8 ± 2.2 A -> 57 A (50 to 64 A)". */
function sideBySide(name: PlanMeasure, { before, measures }: SwapResult): string {
  return `${MEASURE_WORDS[name]} ${fromTo(before.measures[name], measures[name])}`;
}

function isKnownOnASide(name: PlanMeasure, { before, measures }: SwapResult): boolean {
  return isKnown(before.measures[name]) || isKnown(measures[name]);
}

function fromTo(was: Quantity, will: Quantity): string {
  if (!isKnown(was) && !isKnown(will)) return predictedText(will);
  return `${predictedText(was)} -> ${predictedText(will)}`;
}
