import { timeToReachS } from "../../physics/index.ts";

/** Heating of the controller under one counted flight's load, in the air of the next flight. */
export interface HeatConditions {
  readonly ambientC: number;
  readonly limitC: number;
  /** Steady rise at the flight's mean driver, degC. */
  readonly steadyRiseC: number;
  readonly timeConstantS: number;
  /** How far the flight's measured peak stands above the rise by its mean driver, degC, 0 or more. */
  readonly rippleC: number;
}

/**
 * Touchdown, s from take-off, at which the controller reaches its limit when this load goes on: the first-order rise
 * by the mean driver with the flight's own ripple on top. Null when the steady temperature stays below the limit.
 */
export function temperatureLimitS(conditions: HeatConditions): number | null {
  const { ambientC, limitC, steadyRiseC, timeConstantS, rippleC } = conditions;
  const startC = ambientC + rippleC;
  if (startC >= limitC) return 0;
  if (startC + steadyRiseC <= limitC) return null;
  return timeToReachS(startC, startC + steadyRiseC, limitC, timeConstantS);
}
