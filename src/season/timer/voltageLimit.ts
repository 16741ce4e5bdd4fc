import { rootOf } from "../../base/statistics/index.ts";
import { type Chemistry, openCircuitCellV } from "../../physics/index.ts";
import type { ChargeLimit } from "./chargeLimit.ts";

/** What decides when the loaded cells reach their lowest voltage. */
export interface VoltageConditions {
  readonly cells: number;
  readonly chemistry: Chemistry;
  readonly minLoadedCellV: number;
  /** Pack resistance ten seconds into a load, upper end, ohm; of the coldest flight it rests on. */
  readonly resistance10sOhm: number;
  /** Largest current of the counted flights, A. */
  readonly peakCurrentA: number;
  /** Charge of a full pack times health, mAh, and the share of it at the start. */
  readonly capacityMah: number;
  readonly startShare: number;
}

/** Longest flight looked at, s: no timer of this trade is longer. */
const LONGEST_FLIGHT_S = 7200;

/**
 * Touchdown, s from take-off, after which a go-around at the counted flights' largest current would pull
 * the cells below their loaded limit: open-circuit volts at that charge less R(10 s) I. The charge is
 * drawn at the bound rate of the charge limit; open-circuit volts are the low side of the published band.
 * Null when the limit is not reached before the charge is gone.
 */
export function voltageLimitS(charge: ChargeLimit, conditions: VoltageConditions): number | null {
  const room = (touchdownS: number): number => loadedRoomV(touchdownS, charge, conditions);
  if (room(0) <= 0) return 0;
  const emptyAtS = touchdownWhenEmptyS(charge, conditions);
  const end = Math.min(LONGEST_FLIGHT_S, emptyAtS);
  if (room(end) > 0) return null;
  return rootOf(room, 0, end, 0.01);
}

function loadedRoomV(touchdownS: number, charge: ChargeLimit, conditions: VoltageConditions): number {
  const drawnMah = charge.groundMah + charge.goAroundMah + flightChargeMah(touchdownS, charge);
  const leftPct = 100 * (conditions.startShare - drawnMah / conditions.capacityMah);
  const openCellV = openCircuitCellV(Math.max(0, leftPct), conditions.chemistry).low;
  const sagCellV = (conditions.resistance10sOhm * conditions.peakCurrentA) / conditions.cells;
  return openCellV - sagCellV - conditions.minLoadedCellV;
}

/** Charge from take-off to `touchdownS` at the bound rate; within the climb in proportion. */
function flightChargeMah(touchdownS: number, charge: ChargeLimit): number {
  if (touchdownS < charge.climbS) return (charge.climbMah * touchdownS) / charge.climbS;
  return charge.climbMah + charge.boundRateMahPerS * (touchdownS - charge.climbS);
}

function touchdownWhenEmptyS(charge: ChargeLimit, conditions: VoltageConditions): number {
  const left =
    conditions.capacityMah * conditions.startShare - charge.groundMah - charge.goAroundMah - charge.climbMah;
  return charge.climbS + Math.max(0, left) / charge.boundRateMahPerS;
}
