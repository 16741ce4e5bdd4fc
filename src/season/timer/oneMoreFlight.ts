import { type ChargeLimit, chargeLimit } from "./chargeLimit.ts";
import type { ChargeConditions, LoggedLoad } from "./loggedLoad.ts";

/** What one more flight at the typical rate would add, s. */
export function oneMoreFlightS(
  loads: readonly LoggedLoad[],
  conditions: ChargeConditions,
  charge: ChargeLimit,
): number {
  const typical: LoggedLoad = {
    flight: "one more",
    climbS: charge.climbS,
    climbChargeMah: charge.climbMah,
    rateMahPerS: charge.meanRateMahPerS,
    groundChargeMah: charge.groundMah,
    approachS: 0,
    peakCurrentA: 0,
  };
  return chargeLimit([...loads, typical], conditions).touchdownByS - charge.touchdownByS;
}
