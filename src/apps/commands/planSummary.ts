import { isKnown, quantityText } from "../../base/quantity/index.ts";
import { capital } from "../../base/words/index.ts";
import { MEASURE_WORDS } from "../../flight/analysis/index.ts";
import { type PlanResult, predictedPart, restsOn } from "../../flight/judgement/index.ts";
import type { KnownParts, PlanMeasure } from "../../flight/prediction/index.ts";
import { planSentences } from "./planSentences.ts";
import { oneLine } from "./printable.ts";

/** The measures of each line; one that is not known tells why. */
const LINES: readonly (readonly PlanMeasure[])[] = [
  ["staticCurrentA", "staticRpm", "staticPowerW", "powerLoadingWPerKg"],
  ["meanCurrentA", "flightTimeS"],
  ["minCellV", "sagPerCellV", "controllerHotDayPeakC"],
];

/** How many runs count, and what they say. */
export interface KnownFlights {
  readonly flights: number;
  readonly known: KnownParts;
}

/** At most a dozen lines; computes nothing. */
export function planSummary(
  name: string,
  { flights, known }: KnownFlights,
  result: PlanResult,
  next: string,
): readonly string[] {
  const { measures, basisOf, staticThrustN, remarks, text } = result;
  return [
    planSentences.source(name, flights, known.leftOut.length, basisOf.airDensity),
    text,
    ...LINES.map((line) => line.filter((one) => isKnown(measures[one])))
      .filter((line) => line.length > 0)
      .map((line) => sentenceCase(line.map((one) => predictedPart(one, measures[one])).join(", "))),
    ...notPredicted(LINES.flat(), measures),
    ...(isKnown(staticThrustN) ? [planSentences.thrust(quantityText(staticThrustN))] : []),
    restsOn(basisOf),
    ...(remarks.length === 0 ? [] : [planSentences.widened(remarks)]),
    planSentences.cautions(),
    `Next: ${next}`,
  ].map(oneLine);
}

/** Each reason once, with all that it leaves unknown. */
export function notPredicted(
  names: readonly PlanMeasure[],
  measures: PlanResult["measures"],
): readonly string[] {
  const byReason = new Map<string, PlanMeasure[]>();
  for (const name of names) {
    const quantity = measures[name];
    if (quantity.value === null) byReason.set(quantity.why, [...(byReason.get(quantity.why) ?? []), name]);
  }
  return [...byReason].map(([why, missing]) =>
    planSentences.notPredicted(missing.map((name) => MEASURE_WORDS[name]).join(", "), why),
  );
}

export function sentenceCase(text: string): string {
  return `${capital(text)}.`;
}
