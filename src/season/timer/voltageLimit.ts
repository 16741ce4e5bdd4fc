import { rootOf } from "../../base/statistics/index.ts";
import { type Chemistry, openCircuitCellV } from "../../physics/index.ts";
import type { ChargeLimit } from "./chargeLimit.ts";

/** What decides when the loaded cells reach their lowest voltage. */
export interface VoltageConditions {
  readonly cells: number;
  readonly chemistry: Chemistry;
  readonly minLoadedCellV: number;
  /** Pack resistance ten seconds into a load and its half-width, ohm; of the coldest flight it rests on. */
  readonly resistance10sOhm: number;
  readonly resistanceHalfWidthOhm: number;
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
 * the cells below their loaded limit: open-circuit volts at that charge less R(10 s) I, less what is open in them.
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

/**
 * Room above the limit at the typical rate, less its 95 % half-width: the bound rate against the typical one, the
 * band of published open-circuit curves and the resistance are independent, so they add in quadrature.
 */
function loadedRoomV(touchdownS: number, charge: ChargeLimit, conditions: VoltageConditions): number {
  const { cells, peakCurrentA, resistance10sOhm, resistanceHalfWidthOhm, minLoadedCellV } = conditions;
  const typical = openCellV(touchdownS, charge.meanRateMahPerS, charge, conditions);
  const hurried = openCellV(touchdownS, charge.boundRateMahPerS, charge, conditions);
  const open = Math.hypot(
    typical.value - hurried.value,
    typical.value - typical.low,
    (resistanceHalfWidthOhm * peakCurrentA) / cells,
  );
  return typical.value - (resistance10sOhm * peakCurrentA) / cells - open - minLoadedCellV;
}

/** Open-circuit volts of a cell after a flight of this length at this rate and one go-around. */
function openCellV(
  touchdownS: number,
  rateMahPerS: number,
  charge: ChargeLimit,
  { capacityMah, startShare, chemistry }: VoltageConditions,
): ReturnType<typeof openCircuitCellV> {
  const drawnMah = charge.groundMah + charge.goAroundMah + flightChargeMah(touchdownS, rateMahPerS, charge);
  return openCircuitCellV(Math.max(0, 100 * (startShare - drawnMah / capacityMah)), chemistry);
}

/** Charge from take-off to `touchdownS`; within the climb in proportion. */
function flightChargeMah(touchdownS: number, rateMahPerS: number, charge: ChargeLimit): number {
  if (touchdownS < charge.climbS) return (charge.climbMah * touchdownS) / charge.climbS;
  return charge.climbMah + rateMahPerS * (touchdownS - charge.climbS);
}

function touchdownWhenEmptyS(charge: ChargeLimit, conditions: VoltageConditions): number {
  const left =
    conditions.capacityMah * conditions.startShare - charge.groundMah - charge.goAroundMah - charge.climbMah;
  return charge.climbS + Math.max(0, left) / charge.boundRateMahPerS;
}
