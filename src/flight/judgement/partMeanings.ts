import type { Budget } from "../../aircraft/budget.ts";
import type { Facts } from "../../aircraft/facts.ts";
import { isKnown, type KnownQuantity, plainNumber, type Quantity } from "../../base/quantity/index.ts";
import { type AnalysedFlight, type LoadLines, weakestNotices } from "../analysis/index.ts";
import {
  AGREES,
  heldFromCold,
  linesMeet,
  lowestAfterDrop,
  packGivesUp,
  shareOfLimits,
} from "./partSentences.ts";

/** What each part of the aircraft means for the pilot, in sentences; empty where nothing can be said. */
export interface PartMeanings {
  readonly pack: readonly string[];
  readonly heat: readonly string[];
  readonly load: readonly string[];
}

export function partMeanings(flight: AnalysedFlight, facts: Facts, budget: Budget): PartMeanings {
  return {
    pack: packMeaning(flight, facts, budget),
    heat: heatMeaning(flight, facts),
    load: flight.pictures.load.lines === null ? [] : loadMeaning(flight.pictures.load.lines, flight),
  };
}

/** The pack under the planned static current, else under the highest of this flight. */
function packMeaning(
  { kind, measures, pictures, weakestPart }: AnalysedFlight,
  { pack }: Facts,
  { planned }: Budget,
): readonly string[] {
  const isPlanned = planned.staticCurrentA !== null;
  const currentA = planned.staticCurrentA ?? measures.peakCurrentA.value;
  const weakest = weakestNotices(weakestPart).map(({ text }) => text);
  if (currentA === null) return weakest;
  const { dropV, endCellV } = pictures.pack.under(currentA);
  if (!isKnown(dropV)) return weakest;
  const drop = packGivesUp(currentA, isPlanned, dropV);
  const left = isKnown(endCellV) ? [lowestAfterDrop(endCellV, kind, pack.minLoadedCellV)] : [];
  return [drop, ...left, ...weakest];
}

function heatMeaning({ pictures }: AnalysedFlight, { controller }: Facts): readonly string[] {
  const { today, onHotDay, hotDayC } = pictures.heat;
  if (controller.limitC === null) return [];
  const { limitC } = controller;
  return [
    heldFromCold("Today", today.untilLimitS, today.settlesC, limitC),
    heldFromCold(`At ${plainNumber(hotDayC)} °C`, onHotDay.untilLimitS, onHotDay.settlesC, limitC),
  ].filter((sentence) => sentence !== null);
}

function loadMeaning(lines: LoadLines, { pictures }: AnalysedFlight): readonly string[] {
  const { meetsRpm, meetsA, staticRpm, staticA } = lines;
  if (!isKnown(meetsRpm) || !isKnown(meetsA)) return [];
  const meeting = linesMeet(meetsRpm, meetsA);
  if (pictures.load.wrongSetting !== null || !isKnown(staticRpm) || !isKnown(staticA)) return [meeting];
  const shares = shareOfLimits(
    lines.controllerA === null ? null : staticA.value / lines.controllerA,
    lines.maxRpm === null ? null : staticRpm.value / lines.maxRpm,
  );
  return [meeting, agreement(lines, pictures.load.isCurrentEstimated), ...(shares === null ? [] : [shares])];
}

function agreement(lines: LoadLines, isCurrentEstimated: boolean): string {
  const isInside = (found: Quantity, { low, high }: Pick<KnownQuantity, "low" | "high">) =>
    isKnown(found) && low !== null && high !== null && found.value >= low && found.value <= high;
  const { meetsRpm, meetsA, staticRpm, staticA } = lines;
  if (!isKnown(meetsRpm) || !isKnown(meetsA) || !isInside(staticRpm, meetsRpm)) return AGREES.not;
  if (isCurrentEstimated) return AGREES.estimatedCurrent;
  if (!isInside(staticA, meetsA)) return AGREES.not;
  return lines.coefficient.value !== null && lines.coefficient.basis !== "predicted"
    ? AGREES.measuredLine
    : AGREES.publishedLine;
}
