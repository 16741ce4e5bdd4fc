import { atMost, between, lowEnd, type Quantity, unknown } from "../../base/quantity/index.ts";
import { stateOfChargeBandPct } from "../../physics/index.ts";
import type { FlightContext } from "./flightContext.ts";
import { NO_CAPACITY, NO_CELL_COUNT, START_FROM_REST_VOLTS, START_TAKEN_AS_FULL } from "./sentences.ts";

interface StartCharge {
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly why: string | null;
  /** True when nothing in the log shows it. */
  readonly isAssumed: boolean;
}

/** A cell this close to its full voltage was full: rest voltage falls by some hundredths after the charger. */
const NEAR_FULL_V = 0.05;
/** How well a pilot's own figure is known, percentage points (two standard deviations, common practice). */
const STATED_DOUBT_PCT = 3;

/**
 * chargeLeftPct: 100 (1 - used / capacity), less what was missing at the start when the rest voltage shows a
 * pack not full. Rest voltage fixes the state of charge to a band only.
 */
export function chargeLeft(context: FlightContext, chargeUsedMah: Quantity): Quantity {
  const { capacityMah, healthPct } = context.facts.pack;
  if (chargeUsedMah.value === null) return unknown("%", chargeUsedMah.why);
  if (capacityMah === null) return unknown("%", NO_CAPACITY);
  const start = startCharge(context);
  const perMah = 100 / (capacityMah * (healthPct / 100));
  const value = start.value - chargeUsedMah.value * perMah;
  const least = lowEnd(chargeUsedMah);
  const high = start.high - least * perMah;
  if (chargeUsedMah.high === null) return atMost(value, high, "%", "derived", chargeUsedMah.why ?? "");
  const low = start.low - chargeUsedMah.high * perMah;
  if (start.isAssumed) return atMost(value, high, "%", "derived", START_TAKEN_AS_FULL);
  const remark = start.why === null ? {} : { why: start.why, bound: "interval" as const };
  return between(value, low, high, "%", start.why === null ? "derived" : "estimated", remark);
}

function startCharge({ day, facts, restBefore, cells }: FlightContext): StartCharge {
  if (day.startPct !== null) return stated(day.startPct);
  if (restBefore.packV === null || cells === null) {
    return { value: 100, low: 0, high: 100, why: restBefore.why ?? NO_CELL_COUNT, isAssumed: true };
  }
  const restCellV = restBefore.packV / cells;
  const doubtV = (facts.sensors.voltageAccuracyPct / 100) * restCellV;
  if (restCellV >= facts.pack.fullCellV - NEAR_FULL_V) {
    return { value: 100, low: 100, high: 100, why: null, isAssumed: false };
  }
  const { chemistry } = facts.pack;
  const low = stateOfChargeBandPct(restCellV - doubtV, chemistry).low;
  const high = stateOfChargeBandPct(restCellV + doubtV, chemistry).high;
  const { value } = stateOfChargeBandPct(restCellV, chemistry);
  return { value, low, high, why: START_FROM_REST_VOLTS, isAssumed: false };
}

function stated(startPct: number): StartCharge {
  const low = Math.max(0, startPct - STATED_DOUBT_PCT);
  const high = Math.min(100, startPct + STATED_DOUBT_PCT);
  return { value: startPct, low, high, why: null, isAssumed: false };
}
