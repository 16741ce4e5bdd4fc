import type { HeatDriver } from "../analysis/index.ts";
import type { KnownParts } from "./knownParts.ts";
import type { Input } from "./planInputs.ts";
import { scaledRange } from "./range.ts";
import type { Reference } from "./reference.ts";
import { NO_HEATING, NOT_CARRIED_OVER, NOT_USED } from "./sentences.ts";

/**
 * Mean square of the heating current over the square of that at mean power, peaks of a flight included (common
 * practice, no published source).
 */
const FORM = { value: 1.3, low: 1, high: 1.7 } as const;
/** What the load model leaves open when a rise is carried over to another fitting, relative (our choice). */
const CARRIED_OVER = 0.15;

export interface HeatInputs {
  readonly riseC: Input;
  readonly riseRatio: Input;
  readonly risePerA2: Input;
  readonly driver: HeatDriver | null;
}

/** Heating currents of the logged and the asked fitting squared: at the same power, and at the same throttle. */
export interface HeatingLoads {
  readonly logged: number;
  readonly samePower: number;
  readonly sameShare: number;
  /** At the same throttle with the propeller's coefficient at either end of its interval. */
  readonly ofCoefficient: readonly number[];
}

/**
 * The controller's rise above the air: that of the logged flights, carried over by the square of the current that
 * heats it; else (a bench run) the fitted rise per square ampere at the mean power of a flight.
 */
export function heatInputs(
  known: KnownParts,
  reference: Reference | null,
  loads: HeatingLoads | null,
): HeatInputs {
  const rise = reference?.flown.controllerRiseC ?? null;
  const unused: Input = { why: NOT_USED };
  if (reference !== null && rise !== null) {
    if (!reference.isSame && loads === null) {
      return {
        riseC: { why: NOT_CARRIED_OVER },
        riseRatio: unused,
        risePerA2: { why: NOT_CARRIED_OVER },
        driver: null,
      };
    }
    const riseRatio = loads === null ? scaledRange(1, 1, 1, rise.basis) : carriedOver(loads, rise.basis);
    return { riseC: rise, riseRatio, risePerA2: unused, driver: known.controller?.driver ?? null };
  }
  const fitted = known.controller;
  const none: Input = { why: NO_HEATING };
  if (fitted === null) return { riseC: none, riseRatio: unused, risePerA2: none, driver: null };
  const { value, low, high, basis } = fitted.risePerA2;
  const below = 1 - Math.hypot(1 - low / value, 1 - FORM.low / FORM.value);
  const above = 1 + Math.hypot(high / value - 1, FORM.high / FORM.value - 1);
  const risePerA2 = scaledRange(value * FORM.value, Math.max(0, below), above, basis);
  return { riseC: none, riseRatio: unused, risePerA2, driver: fitted.driver };
}

function carriedOver({ logged, samePower, sameShare, ofCoefficient }: HeatingLoads, basis: string): Input {
  const value = samePower / logged;
  const other = sameShare / logged;
  const changes = ofCoefficient.map((load) => value * (load / sameShare - 1));
  return {
    value,
    low: value - Math.hypot(CARRIED_OVER * value, value - Math.min(value, other), Math.min(0, ...changes)),
    high: value + Math.hypot(CARRIED_OVER * value, Math.max(value, other) - value, Math.max(0, ...changes)),
    basis,
  };
}
