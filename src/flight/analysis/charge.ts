import type { Facts } from "../../aircraft/facts.ts";
import type { Quantity } from "../../base/quantity/index.ts";
import type { Recording } from "../../log/recording/index.ts";
import { coveredQuantity } from "./coveredSum.ts";
import { rowsBetween } from "./rowsBetween.ts";
import type { RowRange } from "./segments.ts";
import { summed } from "./summed.ts";
import { type PowerAtEnds, usedQuantity } from "./usedSum.ts";

/** chargeCoveredMah: plain trapezoid sum of the current, holes left out. Interval: gain, sampling, resolution. */
export function coveredCharge(recording: Recording, rows: RowRange, facts: Facts): Quantity {
  return coveredQuantity(summed(recording, "charge", rows, facts), "mAh");
}

/** chargeUsedMah: the covered sum with holes up to a minute estimated and a negative rest reading lifted. */
export function usedCharge(recording: Recording, rows: RowRange, facts: Facts, power: PowerAtEnds): Quantity {
  return usedQuantity(summed(recording, "charge", rows, facts), "mAh", power);
}

/**
 * flightChargeMah: what was used between two times (take-off and touchdown), estimated and lifted like
 * `usedCharge`. The steps across the two times count with their part.
 * @param power whether the log starts or ends between the two times: then it is a lower bound
 */
export function chargeBetween(
  recording: Recording,
  startS: number,
  endS: number,
  facts: Facts,
  power: PowerAtEnds = { startsUnderPower: false, endsUnderPower: false },
): Quantity {
  const range = { ...rowsBetween(recording.timeS, startS, endS), startS, endS };
  return usedQuantity(summed(recording, "charge", range, facts), "mAh", power);
}
