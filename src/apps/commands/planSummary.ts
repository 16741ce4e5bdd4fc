import { isKnown, quantityText } from "../../base/quantity/index.ts";
import { type PlanResult, predictedPart, restsOn } from "../../flight/judgement/index.ts";
import type { PlanMeasure } from "../../flight/prediction/index.ts";
import { planSentences } from "./planSentences.ts";
import { oneLine } from "./printable.ts";

/** The measures of each line; one that is not known tells why. */
const LINES: readonly (readonly PlanMeasure[])[] = [
  ["staticCurrentA", "staticRpm", "staticPowerW", "powerLoadingWPerKg"],
  ["meanCurrentA", "flightTimeS"],
  ["minCellV", "sagPerCellV", "controllerHotDayPeakC"],
];

/** At most a dozen lines; computes nothing. */
export function planSummary(
  name: string,
  flights: number,
  result: PlanResult,
  next: string,
): readonly string[] {
  const { measures, basisOf, staticThrustN, remarks, text } = result;
  return [
    planSentences.source(name, flights, basisOf.airDensity),
    text,
    ...LINES.map((line) => sentenceCase(line.map((one) => predictedPart(one, measures[one])).join(", "))),
    ...(isKnown(staticThrustN) ? [planSentences.thrust(quantityText(staticThrustN))] : []),
    restsOn(basisOf),
    ...(remarks.length === 0 ? [] : [planSentences.widened(remarks)]),
    planSentences.cautions(),
    `Next: ${next}`,
  ].map(oneLine);
}

export function sentenceCase(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}
