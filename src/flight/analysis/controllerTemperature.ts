import { atLeast, atMost, between, lowEnd, type Quantity, unknown } from "../../base/quantity/index.ts";
import { smallestStep } from "../../log/recording/index.ts";
import { ambientOfDay } from "./ambientOfDay.ts";
import { workingChannel } from "./channelOrWhy.ts";
import { type FlightContext, runningRows } from "./flightContext.ts";
import type { LagCorrection } from "./lagCorrection.ts";
import { peakTemperature } from "./peaks.ts";
import { hotDayFrom, lagNotCorrected, lagOnTop, NO_CONTROLLER_LIMIT } from "./sentences.ts";

/** Switch resistance grows with temperature, per kelvin: heat does, too. */
const HEAT_GROWTH_PER_K = 0.005;

/** controllerPeakC as logged, its margin to the limit, and both on the hot day. */
export function controllerTemperature(
  context: FlightContext,
  lag: LagCorrection | null,
): {
  controllerPeakC: Quantity;
  controllerMarginC: Quantity;
  controllerHotDayPeakC: Quantity;
  controllerHotDayMarginC: Quantity;
} {
  const { recording, facts, rows } = context;
  const peak = peakTemperature(recording, "controllerTemperature", rows, facts, runningRows(context));
  const hotDay = hotDayPeak(context, peak, lag);
  const remark = lag === null ? lagNotCorrected() : lagOnTop(lag.valueC);
  return {
    controllerPeakC: peak.value === null || peak.high === null ? peak : { ...peak, why: remark },
    controllerMarginC: marginTo(facts.controller.limitC, peak),
    controllerHotDayPeakC: hotDay,
    controllerHotDayMarginC: marginTo(facts.controller.limitC, hotDay),
  };
}

/** The limit less a peak: positive is room. */
function marginTo(limitC: number | null, peak: Quantity): Quantity {
  if (peak.value === null) return unknown("degC", peak.why);
  if (limitC === null) return unknown("degC", NO_CONTROLLER_LIMIT);
  const high = limitC - lowEnd(peak);
  const basis = peak.basis === "measured" ? "derived" : peak.basis;
  if (peak.high === null) return atMost(limitC - peak.value, high, "degC", basis, peak.why ?? "");
  return between(limitC - peak.value, limitC - peak.high, high, "degC", basis);
}

/**
 * The same flight on the hot day: temperatures rise with the air one for one, and upwards a little more as
 * the hotter switches heat more. U = 2 sqrt(u_ambient^2 + u_probe^2 + step^2 / 12).
 */
function hotDayPeak(context: FlightContext, peak: Quantity, lag: LagCorrection | null): Quantity {
  if (peak.value === null) return unknown("degC", peak.why);
  const ambient = ambientOfDay(context);
  if (ambient.ambientC === null) return unknown("degC", ambient.why);
  const { facts, recording } = context;
  const values = workingChannel(recording, "controllerTemperature") ?? new Float64Array();
  const warmerC = facts.field.hotDayC - ambient.ambientC;
  const riseC = Math.max(0, peak.value + (lag?.valueC ?? 0) - ambient.ambientC);
  const growth = riseC * HEAT_GROWTH_PER_K;
  const moreC = warmerC > 0 && growth < 1 ? (growth * warmerC) / (1 - growth) : 0;
  const probeC = facts.sensors.temperatureAccuracyC / 2;
  const stepC = smallestStep(values) / Math.sqrt(12);
  const halfWidthC = Math.hypot(
    2 * Math.hypot(ambient.standardDeviationC, probeC, stepC),
    lag?.halfWidthC ?? 0,
  );
  const value = peak.value + (lag?.valueC ?? 0) + warmerC;
  const why = hotDayFrom(facts.field.hotDayC, ambient.ambientC, ambient.source);
  if (peak.high === null) {
    return atLeast(value, value - halfWidthC, "degC", "predicted", `${why}; ${peak.why}`);
  }
  return between(value, value - halfWidthC, value + halfWidthC + moreC, "degC", "predicted", { why });
}
