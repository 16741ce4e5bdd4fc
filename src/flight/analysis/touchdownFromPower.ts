import type { Recording } from "../../log/recording/index.ts";
import type { PowerTrace } from "./powerTrace.ts";
import type { TimeSpan } from "./takeOff.ts";
import {
  between,
  groundLoadAt,
  type PowerMoments,
  RISE_AFTER_TOUCHDOWN_S,
  taxiLoadAt,
  throttleClosed,
} from "./touchdownSigns.ts";

/** Usual approach at low power, from the end of flight power to the ground (common practice, no published source). */
const USUAL_APPROACH_S = 20;
/** The throttle is still coming back for this long after the end of flight power. */
const SETTLE_S = 1.5;
/** Flare and roll-out; a longer time at low load is the approach itself. */
const LONGEST_FLARE_S = 12;
/** From closing the throttle to the wheels or floats touching. */
const FLARE_S = 2;

/**
 * Power alone does not show a touchdown: it lies between the end of flight power and the end of motor
 * running. Its likely moment, the best sign first: the propeller's load at its speed rises to that of the
 * ground; the throttle closes for the flare; the load comes back to that of taxiing; the usual length.
 */
export function touchdownFromPower(recording: Recording, trace: PowerTrace, moments: PowerMoments): TimeSpan {
  const { powerEndS, endS } = moments;
  const likelyS = likelyTouchdown(recording, trace, moments);
  return {
    value: Math.min(Math.max(likelyS, powerEndS), Math.max(powerEndS, endS)),
    low: powerEndS,
    high: Math.max(powerEndS, endS),
  };
}

/** An approach is flown in a few parts of lower power; more of them are no approach, and each costs a pass. */
const MOST_PARTS = 8;

function likelyTouchdown(
  recording: Recording,
  trace: PowerTrace,
  moments: PowerMoments,
  partsLeft = MOST_PARTS,
): number {
  const { powerEndS, endS } = moments;
  const tail = between(trace, powerEndS + SETTLE_S + recording.stepS, endS);
  const loadedS = groundLoadAt(recording, trace, moments, tail);
  if (loadedS !== null) return loadedS - RISE_AFTER_TOUCHDOWN_S;
  const closed = throttleClosed(trace, tail);
  if (closed && closed.endS - closed.startS <= LONGEST_FLARE_S) return closed.startS + FLARE_S;
  if (closed && partsLeft > 0) {
    return likelyTouchdown(recording, trace, { ...moments, powerEndS: closed.startS }, partsLeft - 1);
  }
  const taxiS = taxiLoadAt(trace, moments, tail);
  if (taxiS !== null) return taxiS - RISE_AFTER_TOUCHDOWN_S;
  return powerEndS + Math.min(USUAL_APPROACH_S, (endS - powerEndS) / 2);
}
