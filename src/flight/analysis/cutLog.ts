import { isKnown, type Quantity } from "../../base/quantity/index.ts";
import type { FlightContext } from "./flightContext.ts";
import type { MeasureName, Measures } from "./measures.ts";
import { CUT_MAY_BE_HIGHER, CUT_MAY_BE_LOWER } from "./sentences.ts";

const MAY_BE_HIGHER = [
  "peakCurrentA",
  "peakPowerW",
  "peakRpm",
  "overRatingS",
  "longestOverRatingS",
  "motorPeakC",
  "packPeakC",
  "controllerPeakC",
  "controllerHotDayPeakC",
] as const satisfies readonly MeasureName[];
const MAY_BE_LOWER = [
  "minPackV",
  "minCellV",
  "controllerMarginC",
  "controllerHotDayMarginC",
] as const satisfies readonly MeasureName[];

/**
 * Extremes of a log that starts or ends under power: what was not logged may have gone beyond them, so they are
 * bounds. The margin of a peak falls as the peak rises.
 */
export function openedByCut(
  measures: Measures,
  { startsUnderPower, endsUnderPower }: FlightContext,
): Partial<Measures> {
  if (!startsUnderPower && !endsUnderPower) return {};
  return Object.fromEntries([
    ...MAY_BE_HIGHER.map((name) => [name, openAbove(measures[name])]),
    ...MAY_BE_LOWER.map((name) => [name, openBelow(measures[name])]),
  ]);
}

function openAbove(quantity: Quantity): Quantity {
  if (!isKnown(quantity) || quantity.high === null) return quantity;
  return { ...quantity, high: null, bound: "atLeast", why: withRemark(CUT_MAY_BE_HIGHER, quantity.why) };
}

function openBelow(quantity: Quantity): Quantity {
  if (!isKnown(quantity) || quantity.low === null) return quantity;
  return { ...quantity, low: null, bound: "atMost", why: withRemark(CUT_MAY_BE_LOWER, quantity.why) };
}

function withRemark(why: string, remark: string | undefined): string {
  return remark === undefined ? why : `${why}; ${remark}`;
}
