import {
  atLeast,
  between,
  highEnd,
  isKnown,
  type KnownQuantity,
  lowEnd,
  type Quantity,
  unknown,
} from "../../base/quantity/index.ts";
import { chargeBetween } from "./charge.ts";
import type { FlightContext } from "./flightContext.ts";
import { whyFlightIsCut, whyNoFlight } from "./flightTime.ts";
import { rowsBetween } from "./rowsBetween.ts";
import { MEAN_OF_A_PART, ofLoggedPart } from "./sentences.ts";
import { MEAN_OF_SEEN } from "./sumSentences.ts";
import { unseenCurrent } from "./unseenCurrent.ts";

const SECONDS_PER_HOUR = 3600;
const MAH_PER_AH = 1000;

/** flightChargeMah: charge from take-off to touchdown, with what the doubt about touchdown is worth. */
export function flightCharge(context: FlightContext): Quantity {
  const { shape, recording, facts } = context;
  if (shape === null) return unknown("mAh", whyNoFlight(context));
  const { takeOff, touchdown } = shape;
  const chargeOver = (startS: number, endS: number) => chargeBetween(recording, startS, endS, facts);
  const charge = chargeOver(takeOff.value, touchdown.value);
  if (!isKnown(charge)) return charge;
  const why = whyFlightIsCut(shape);
  const low = lowEnd(charge);
  if (why !== null) return atLeast(charge.value, low, "mAh", charge.basis, why);
  const least = knownOr(charge, chargeOver(takeOff.high, touchdown.low));
  const most = knownOr(charge, chargeOver(takeOff.low, touchdown.high));
  if (charge.high === null || most.high === null) {
    return atLeast(charge.value, low, "mAh", charge.basis, charge.why ?? most.why ?? "");
  }
  const less = charge.value - least.value;
  const more = most.value - charge.value;
  const bound = shape.seenBy === "power" ? ({ bound: "interval" } as const) : {};
  const remark = charge.why === undefined ? {} : { why: charge.why };
  const wide = { ...bound, ...remark };
  return between(
    charge.value,
    Math.min(low - Math.max(0, less), lowEnd(least)),
    Math.max(charge.high + Math.max(0, more), most.high),
    "mAh",
    charge.basis,
    wide,
  );
}

function knownOr(charge: KnownQuantity, other: Quantity): KnownQuantity {
  return isKnown(other) ? other : charge;
}

/**
 * meanCurrentA: charge of the flight over its time; of a bench run over its running time. Of a flight that
 * the log cuts: over the part that was logged, and in doubt, so that it is not judged as if whole.
 */
export function meanCurrent(context: FlightContext): Quantity {
  const { shape, group, recording, facts } = context;
  if (group === null) return unknown("A", whyNoFlight(context));
  const overSpan = (startS: number, endS: number, timeS: number) =>
    amperes(chargeBetween(recording, startS, endS, facts), timeS, lostSeconds(context, startS, endS));
  if (shape === null) {
    const runS = group.runs.reduce((sum, run) => sum + run.endS - run.startS, 0);
    return overSpan(group.startS, group.endS, runS);
  }
  const { takeOff, touchdown } = shape;
  const mean = overSpan(takeOff.value, touchdown.value, touchdown.value - takeOff.value);
  const shortest = overSpan(takeOff.high, touchdown.low, touchdown.low - takeOff.high);
  const longest = overSpan(takeOff.low, touchdown.high, touchdown.high - takeOff.low);
  const why = whyFlightIsCut(shape);
  if (why === null) return enclosing(mean, [shortest, longest], {});
  const ofPart = enclosing(mean, [shortest, longest], { why: ofLoggedPart(why) });
  return isKnown(ofPart) ? { ...ofPart, doubt: MEAN_OF_A_PART } : ofPart;
}

function lostSeconds({ recording }: FlightContext, startS: number, endS: number): number {
  return unseenCurrent(recording, rowsBetween(recording.timeS, startS, endS)).lostS;
}

/** Seconds without current do not count in the mean; its lower bound has nothing flow in them. */
function amperes(charge: Quantity, timeS: number, lostS: number): Quantity {
  if (charge.value === null) return unknown("A", charge.why);
  const perMah = SECONDS_PER_HOUR / MAH_PER_AH / timeS;
  const value = charge.value * perMah;
  if (lostS > 0 && lostS < timeS) {
    const seen = (value * timeS) / (timeS - lostS);
    return atLeast(seen, lowEnd(charge) * perMah, "A", charge.basis, MEAN_OF_SEEN);
  }
  if (charge.high === null)
    return atLeast(value, lowEnd(charge) * perMah, "A", charge.basis, charge.why ?? "");
  return between(value, lowEnd(charge) * perMah, charge.high * perMah, "A", charge.basis);
}

/** The first quantity with an interval that holds those of the others too. */
function enclosing(mean: Quantity, others: readonly Quantity[], more: { readonly why?: string }): Quantity {
  if (mean.value === null || mean.low === null || mean.high === null) return mean;
  const known = others.filter(isKnown);
  const values = known.map((other) => other.value);
  const low = mean.low - Math.max(0, ...values.map((value) => mean.value - value));
  const high = mean.high + Math.max(0, ...values.map((value) => value - mean.value));
  const lowest = Math.min(low, ...known.map((other) => lowEnd(other)));
  const highest = Math.max(high, ...known.map((other) => highEnd(other)));
  return between(mean.value, lowest, highest, "A", mean.basis, more);
}
