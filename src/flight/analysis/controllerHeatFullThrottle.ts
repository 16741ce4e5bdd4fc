import { between, type Quantity, unknown } from "../../base/quantity/index.ts";
import { timeToReachS } from "../../physics/index.ts";
import type { ControllerHeat } from "./controllerHeat.ts";
import { fullThrottleFor, LIMIT_NOT_REACHED, NO_LIMIT_OR_CURRENT } from "./identifiedSentences.ts";

/**
 * Seconds of full throttle until the controller reaches its limit, from the temperature of the surrounding air;
 * null with the reason when it never does or is not known. Motor and pack current are one at full throttle.
 */
export function fullThrottleUntilLimitS(
  heat: ControllerHeat,
  fullThrottleA: number | null,
  limitC: number | null,
  ambientC: number,
): Quantity {
  const { timeConstantS, risePerA2 } = heat;
  if (timeConstantS.value === null) return unknown("s", timeConstantS.why);
  if (risePerA2.value === null) return unknown("s", risePerA2.why);
  if (fullThrottleA === null || limitC === null) return unknown("s", NO_LIMIT_OR_CURRENT);
  const until = (tauS: number, rise: number) =>
    timeToReachS(ambientC, ambientC + rise * fullThrottleA ** 2, limitC, tauS);
  const value = until(timeConstantS.value, risePerA2.value);
  if (!Number.isFinite(value)) return unknown("s", LIMIT_NOT_REACHED);
  const low = until(timeConstantS.low ?? timeConstantS.value, risePerA2.high ?? risePerA2.value);
  const high = until(timeConstantS.high ?? timeConstantS.value, risePerA2.low ?? risePerA2.value);
  const why = fullThrottleFor(ambientC);
  if (!Number.isFinite(high)) {
    return { value, low, high: null, unit: "s", basis: "predicted", bound: "atLeast", why };
  }
  return between(value, low, high, "s", "predicted", { why });
}
