import type { ChargeLimit } from "./chargeLimit.ts";
import type { ChargeConditions } from "./loggedLoad.ts";
import type { TimerTerm } from "./timerSetting.ts";

/** The sum behind the charge limit, term by term, so that each second can be followed. */
export function explainCharge(
  charge: ChargeLimit,
  conditions: ChargeConditions,
  approachS: number,
): readonly TimerTerm[] {
  const pack = conditions.capacityMah * conditions.health;
  return [
    { what: "pack at the start", value: pack * conditions.startShare, unit: "mAh" },
    { what: "reserve to land with", value: -pack * conditions.reserveShare, unit: "mAh" },
    { what: "run-up, taxi and standby", value: -charge.groundMah, unit: "mAh" },
    { what: "one go-around of 30 s", value: -charge.goAroundMah, unit: "mAh" },
    { what: "take-off and climb", value: -charge.climbMah, unit: "mAh" },
    { what: "left for the flight", value: charge.usableMah - charge.climbMah, unit: "mAh" },
    { what: "typical rate after the climb", value: charge.meanRateMahPerS * 60, unit: "mAh/min" },
    { what: "rate that 19 of 20 flights stay below", value: charge.boundRateMahPerS * 60, unit: "mAh/min" },
    { what: "longest approach and landing", value: approachS, unit: "s" },
  ];
}
