import type { Input } from "./planInputs.ts";
import type { Range } from "./range.ts";
import type { Reference } from "./reference.ts";
import { COMMON_PRACTICE, scaledFrom } from "./sentences.ts";

/** Mean current of a flight over the static current (common practice, no published source). */
const CRUISE_SHARE: Range = { value: 0.4, low: 0.25, high: 0.6, basis: COMMON_PRACTICE };

/**
 * Share of the full-throttle current that a flight draws on average. For another propeller or pack: the same
 * aircraft flown alike asks for the same power, so the share changes against the static power; up to the share
 * itself staying as it was is left open.
 * @param powerRatio static power of the logged fitting over that of the one asked about
 */
export function cruiseShareInput(reference: Reference | null, powerRatio: number): Input {
  const measured = reference?.flown.cruiseShare ?? null;
  if (reference === null || measured === null) return CRUISE_SHARE;
  if (reference.isSame || !(powerRatio > 0)) return measured;
  const byPower = measured.value * powerRatio;
  return {
    value: byPower,
    low: Math.min(
      byPower - Math.hypot(byPower - measured.low * powerRatio, byPower - Math.min(byPower, measured.value)),
    ),
    high:
      byPower + Math.hypot(measured.high * powerRatio - byPower, Math.max(byPower, measured.value) - byPower),
    basis: scaledFrom(measured.basis),
  };
}
