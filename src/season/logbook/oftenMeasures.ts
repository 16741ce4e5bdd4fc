import { MEASURE_NAMES, type MeasureName, type Measures } from "../../flight/analysis/measures.ts";

/** Measures that a timer asks of every flight: they stand in the front of the index. */
export const OFTEN = [
  "flightTimeS",
  "chargeUsedMah",
  "chargeCoveredMah",
  "peakCurrentA",
  "packResistance10sMohm",
  "controllerHotDayPeakC",
  "controllerTimeConstantS",
  "controllerRisePerA2",
] as const satisfies readonly MeasureName[];

export type OftenMeasures = Pick<Measures, (typeof OFTEN)[number]>;

/** All others. */
export const SELDOM: readonly MeasureName[] = MEASURE_NAMES.filter(
  (name) => !(OFTEN as readonly MeasureName[]).includes(name),
);

export function oftenOf(measures: Measures): OftenMeasures {
  return Object.fromEntries(OFTEN.map((name) => [name, measures[name]])) as unknown as OftenMeasures;
}
