import type { Notice } from "../../base/notices/index.ts";
import { stateOfChargeBandPct } from "../../physics/index.ts";
import type { FlightContext } from "./flightContext.ts";
import type { Measures } from "./measures.ts";
import { restVoltsDisagree } from "./sentences.ts";

/** A cell goes on recovering for minutes after the motor stops (common practice, no published source). */
const STILL_RECOVERING_V = 0.04;

/** The band spans a few published cells; another may lie this far outside (our judgement, no published source). */
const OTHER_CELLS_PCT = 8;

/**
 * A warning where the resting volts after landing and the charge left by the sum cannot both be right: their ranges
 * lie clearly apart. Nothing is replaced: the sensor's gain, the capacity and the pack's age all look alike here.
 */
export function restChargeNotices(context: FlightContext, measures: Measures): readonly Notice[] {
  const { restAfter, cells, facts } = context;
  const { chargeLeftPct } = measures;
  if (restAfter.packV === null || cells === null || chargeLeftPct.value === null) return [];
  const restCellV = restAfter.packV / cells;
  const doubtV = (facts.sensors.voltageAccuracyPct / 100) * restCellV;
  const { chemistry } = facts.pack;
  const lowPct = stateOfChargeBandPct(restCellV - doubtV, chemistry).low;
  const highPct = stateOfChargeBandPct(restCellV + doubtV + STILL_RECOVERING_V, chemistry).high;
  const { low, high } = chargeLeftPct;
  const isApart =
    (low !== null && low > highPct + OTHER_CELLS_PCT) || (high !== null && high < lowPct - OTHER_CELLS_PCT);
  return isApart ? [restVoltsDisagree(restCellV, lowPct, highPct, chargeLeftPct)] : [];
}
