import { highEnd, isKnown, type KnownQuantity, lowEnd } from "../../base/quantity/index.ts";
import { firstOrderC } from "../../physics/index.ts";
import type { BriefFlight } from "../logbook/index.ts";
import type { HeatConditions } from "./temperatureLimit.ts";

/** Heat grows with the temperature of the switches, per kelvin: on a hotter day than reckoned the rise is larger. */
const HEAT_GROWTH_PER_K = 0.005;

/**
 * Heating of one flight for the next flight's air, once with the low and once with the high end of the steady
 * rise: beyond the flight's own length the high end is the hotter one, before it the low end. The ripple takes up the
 * difference to the measured hot-day peak, so that the flight itself is met. Null where the log does not tell.
 */
export function heatOfFlight(
  entry: BriefFlight,
  ambientC: number,
  limitC: number,
): readonly HeatConditions[] | null {
  const { controllerRisePerA2, controllerTimeConstantS, controllerHotDayPeakC, flightTimeS } =
    entry.check.measures;
  const meanDriverA2 = entry.load?.meanDriverA2 ?? null;
  if (meanDriverA2 === null || flightTimeS.value === null) return null;
  if (!isKnown(controllerRisePerA2) || !isKnown(controllerTimeConstantS)) return null;
  if (!isKnown(controllerHotDayPeakC)) return null;
  const peakC = peakIn(ambientC, entry.facts.field.hotDayC, controllerHotDayPeakC);
  const timeConstantS = controllerTimeConstantS.value;
  const lengthS = flightTimeS.value;
  return endsOf(controllerRisePerA2).map((risePerA2) => {
    const steadyRiseC = risePerA2 * meanDriverA2;
    const reachedC = firstOrderC(ambientC, ambientC + steadyRiseC, lengthS, timeConstantS);
    return { ambientC, limitC, steadyRiseC, timeConstantS, rippleC: Math.max(0, peakC - reachedC) };
  });
}

/** The flight's peak in other air, upper end, degC: one for one, and a little more where it is hotter. */
export function peakIn(ambientC: number, hotDayC: number, hotDayPeak: KnownQuantity): number {
  const peakC = highEnd(hotDayPeak);
  const hotterC = ambientC - hotDayC;
  const growth = Math.max(0, hotDayPeak.value - hotDayC) * HEAT_GROWTH_PER_K;
  return peakC + (hotterC > 0 && growth < 1 ? hotterC / (1 - growth) : hotterC);
}

function endsOf(quantity: KnownQuantity): readonly number[] {
  return [lowEnd(quantity), highEnd(quantity)];
}
