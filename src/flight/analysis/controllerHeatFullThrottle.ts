import { between, highEnd, known, lowEnd, type Quantity, unknown } from "../../base/quantity/index.ts";
import { timeToReachS } from "../../physics/index.ts";
import type { ControllerHeat } from "./controllerHeat.ts";
import {
  AIR_AT_LIMIT,
  fullThrottleFor,
  limitNotReached,
  NO_LIMIT_OR_CURRENT,
} from "./identifiedSentences.ts";

type Heating = Pick<ControllerHeat, "timeConstantS" | "risePerA2">;

/** Air that a controller starts from, degC, with its 95 % half-width. */
export interface StartingAir {
  readonly ambientC: number;
  readonly halfWidthC: number;
}

/** Where the controller settles at full throttle, degC. Motor and pack current are one there. */
export function fullThrottleSettlesC(
  { risePerA2 }: Heating,
  fullThrottleA: number | null,
  air: StartingAir,
): Quantity {
  if (risePerA2.value === null) return unknown("degC", risePerA2.why);
  if (fullThrottleA === null) return unknown("degC", NO_LIMIT_OR_CURRENT);
  const riseC = (perA2: number) => perA2 * fullThrottleA ** 2;
  const rise = riseC(risePerA2.value);
  const [least, most] = [riseC(lowEnd(risePerA2)), riseC(highEnd(risePerA2))];
  return known(
    air.ambientC + rise,
    Math.hypot(air.halfWidthC, Math.max(rise - least, most - rise)),
    "degC",
    "predicted",
  );
}

/**
 * Seconds of full throttle until the controller reaches its limit, from the temperature of the surrounding air;
 * null with the reason when it does not or is not known. An interval that reaches a limit the value does not says so.
 */
export function fullThrottleUntilLimitS(
  heat: Heating,
  fullThrottleA: number | null,
  limitC: number | null,
  air: StartingAir,
): Quantity {
  const { timeConstantS, risePerA2 } = heat;
  if (timeConstantS.value === null) return unknown("s", timeConstantS.why);
  if (risePerA2.value === null) return unknown("s", risePerA2.why);
  if (fullThrottleA === null || limitC === null) return unknown("s", NO_LIMIT_OR_CURRENT);
  const { ambientC, halfWidthC } = air;
  if (ambientC >= limitC) return unknown("s", AIR_AT_LIMIT);
  const until = (tauS: number, rise: number, startC: number) =>
    timeToReachS(startC, startC + rise * fullThrottleA ** 2, limitC, tauS);
  const [tauS, rise] = [timeConstantS.value, risePerA2.value];
  const soonest = { tauS: lowEnd(timeConstantS), rise: highEnd(risePerA2) };
  const latest = { tauS: highEnd(timeConstantS), rise: lowEnd(risePerA2) };
  const value = until(tauS, rise, ambientC);
  if (!Number.isFinite(value)) {
    const atWorstS = until(soonest.tauS, soonest.rise, ambientC + halfWidthC);
    return unknown("s", limitNotReached(Number.isFinite(atWorstS) ? atWorstS : null));
  }
  const earlier = Math.hypot(
    value - until(soonest.tauS, soonest.rise, ambientC),
    value - until(tauS, rise, ambientC + halfWidthC),
  );
  const later = Math.hypot(
    until(latest.tauS, latest.rise, ambientC) - value,
    until(tauS, rise, ambientC - halfWidthC) - value,
  );
  const low = Math.max(0, value - earlier);
  const why = fullThrottleFor(ambientC);
  if (!Number.isFinite(later)) {
    return { value, low, high: null, unit: "s", basis: "predicted", bound: "atLeast", why };
  }
  return between(value, low, value + later, "s", "predicted", { why });
}
