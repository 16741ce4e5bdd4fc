import { atLeast, between, type Quantity, unknown } from "../../base/quantity/index.ts";
import { chargeBetween } from "./charge.ts";
import type { FlightContext } from "./flightContext.ts";
import { whyFlightIsCut, whyNoFlight } from "./flightTime.ts";

const SECONDS_PER_HOUR = 3600;
const MAH_PER_AH = 1000;

/** flightChargeMah: charge from take-off to touchdown, with what the doubt about touchdown is worth. */
export function flightCharge(context: FlightContext): Quantity {
  const { shape, recording, facts } = context;
  if (shape === null) return unknown("mAh", whyNoFlight(context));
  const { takeOff, touchdown } = shape;
  const between2 = (startS: number, endS: number) => chargeBetween(recording, startS, endS, facts);
  const charge = between2(takeOff.value, touchdown.value);
  if (charge.value === null) return charge;
  const why = whyFlightIsCut(shape);
  const low = charge.low ?? charge.value;
  if (why !== null) return atLeast(charge.value, low, "mAh", charge.basis, why);
  if (charge.high === null) return charge;
  const less = charge.value - (between2(takeOff.high, touchdown.low).value ?? charge.value);
  const more = (between2(takeOff.low, touchdown.high).value ?? charge.value) - charge.value;
  const bound = shape.seenBy === "power" ? ({ bound: "interval" } as const) : {};
  const remark = charge.why === undefined ? {} : { why: charge.why };
  const wide = { ...bound, ...remark };
  return between(
    charge.value,
    low - Math.max(0, less),
    charge.high + Math.max(0, more),
    "mAh",
    charge.basis,
    wide,
  );
}

/** meanCurrentA: charge of the flight over its time; of a bench run over its running time. */
export function meanCurrent(
  context: FlightContext,
  flightChargeMah: Quantity,
  flightTimeS: Quantity,
): Quantity {
  const { shape, group, recording, facts } = context;
  if (shape !== null) return ratio(flightChargeMah, flightTimeS);
  if (group === null) return unknown("A", whyNoFlight(context));
  const charge = chargeBetween(recording, group.startS, group.endS, facts);
  const runS = group.runs.reduce((sum, run) => sum + run.endS - run.startS, 0);
  return overTime(charge, runS, runS, runS);
}

function ratio(charge: Quantity, time: Quantity): Quantity {
  if (time.value === null) return unknown("A", time.why);
  return overTime(charge, time.value, time.low ?? time.value, time.high ?? time.value);
}

/**
 * A longer flight at touchdown doubt holds more charge too, so the relative doubts of charge and time are
 * not independent: the interval takes the charge's own at the likely time.
 */
function overTime(charge: Quantity, timeS: number, lowS: number, highS: number): Quantity {
  if (charge.value === null) return unknown("A", charge.why);
  if (!(timeS > 0)) return unknown("A", "the running time is nought");
  const perSecond = SECONDS_PER_HOUR / MAH_PER_AH;
  const value = (charge.value / timeS) * perSecond;
  const ends = [
    ((charge.low ?? charge.value) / Math.max(lowS, 1e-9)) * perSecond,
    ((charge.high ?? charge.value) / highS) * perSecond,
    ((charge.low ?? charge.value) / timeS) * perSecond,
    ((charge.high ?? charge.value) / timeS) * perSecond,
  ].filter(Number.isFinite);
  return between(value, Math.min(...ends), Math.max(...ends), "A", charge.basis);
}
