import type { Facts } from "../../aircraft/facts.ts";
import type { Quantity } from "../../base/quantity/index.ts";
import type { Recording } from "../../log/recording/index.ts";
import { coveredQuantity } from "./coveredSum.ts";
import type { RowRange } from "./segments.ts";
import { summed } from "./summed.ts";
import { type PowerAtEnds, usedQuantity } from "./usedSum.ts";

/** energyCoveredWh: plain trapezoid sum of volts times current over rows that hold both, holes left out. */
export function coveredEnergy(recording: Recording, rows: RowRange, facts: Facts): Quantity {
  return coveredQuantity(summed(recording, "energy", rows, facts), "Wh");
}

/** energyUsedWh: the covered sum with holes up to a minute estimated and a negative rest reading lifted. */
export function usedEnergy(recording: Recording, rows: RowRange, facts: Facts, power: PowerAtEnds): Quantity {
  return usedQuantity(summed(recording, "energy", rows, facts), "Wh", power);
}
