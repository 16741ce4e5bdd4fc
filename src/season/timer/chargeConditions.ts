import type { Facts } from "../../aircraft/facts.ts";
import type { CurrentCalibration } from "../logbook/index.ts";
import type { ChargeConditions } from "./loggedLoad.ts";
import type { NextFlight } from "./nextFlight.ts";

/** Null without a capacity. A calibrated sensor's doubt is its calibration's, else the stated accuracy. */
export function chargeConditions(
  fitted: Facts,
  next: NextFlight,
  calibration: CurrentCalibration | null,
): ChargeConditions | null {
  const { capacityMah, healthPct } = fitted.pack;
  if (capacityMah === null) return null;
  const gainStandardDeviation = calibration?.isApplied
    ? Math.log(calibration.high / calibration.low) / 4
    : fitted.sensors.currentAccuracyPct / 200;
  return {
    capacityMah,
    health: healthPct / 100,
    startShare: (next.startPct ?? 100) / 100,
    reserveShare: next.reservePct / 100,
    gainStandardDeviation,
  };
}
