import { median, quantile } from "../../base/statistics/index.ts";
import type { Recording } from "../../log/recording/index.ts";
import { workingChannel } from "./channelOrWhy.ts";
import { levelRise } from "./levelRise.ts";
import type { PowerTrace } from "./powerTrace.ts";
import type { TimeSpan } from "./takeOff.ts";

/** Moments of the flight that are known before its touchdown is. Seconds since the first row. */
export interface PowerMoments {
  /** First and last motor running. */
  readonly startS: number;
  readonly endS: number;
  readonly takeOffS: number;
  /** Load that separates flight from taxi. */
  readonly flightLevel: number;
  /** End of sustained flight power. */
  readonly powerEndS: number;
}

/** Usual approach at low power, from the end of flight power to the ground (common practice, no published source). */
const USUAL_APPROACH_S = 20;
/** The throttle is still coming back for this long after the end of flight power. */
const SETTLE_S = 1.5;
/** A throttle closed for the flare is this far below the approach's load, for this long. */
const FLARE_SHARE = 0.55;
const SHORTEST_FLARE_S = 1.5;
/** Flare and roll-out; a longer time at low load is the approach itself. */
const LONGEST_FLARE_S = 12;
/** From closing the throttle to the wheels or floats touching. */
const FLARE_S = 2;
/** Rows of the approach whose load the flare is held against. */
const APPROACH_S = 10;
/** Share of the load coefficient on the ground that an approach stays below. */
const GROUND_SHARE = 0.65;
/** Share of the load of taxiing out that an approach at taxi throttle stays below. */
const TAXI_SHARE = 0.7;
/** Shortest time at either level of a rise. */
const SHORTEST_LEVEL_S = 3;
/** A propeller on the ground loads the motor this much more than in an approach at the same throttle. */
const GROUND_RISE = Math.log(1.3);
/** The load rises as the aircraft slows down after it has touched. */
const RISE_AFTER_TOUCHDOWN_S = 1.5;
/** A tail without a ground part ends this long after touchdown: the roll-out. */
const ROLL_OUT_S = 3;

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

function likelyTouchdown(recording: Recording, trace: PowerTrace, moments: PowerMoments): number {
  const { powerEndS, endS } = moments;
  const tail = between(trace, powerEndS + SETTLE_S, endS);
  const loadedS = groundLoadAt(recording, trace, moments, tail);
  if (loadedS !== null) return loadedS - RISE_AFTER_TOUCHDOWN_S;
  const closed = throttleClosed(trace, tail);
  if (closed && closed.endS - closed.startS <= LONGEST_FLARE_S) return closed.startS + FLARE_S;
  if (closed) return likelyTouchdown(recording, trace, { ...moments, powerEndS: closed.startS });
  const taxiS = taxiLoadAt(trace, moments, tail);
  if (taxiS !== null) return taxiS - RISE_AFTER_TOUCHDOWN_S;
  return powerEndS + Math.min(USUAL_APPROACH_S, (endS - powerEndS) / 2);
}

function between(trace: PowerTrace, fromS: number, toS: number): readonly number[] {
  const indices: number[] = [];
  for (let i = trace.timeS.length - 1; i >= 0 && trace.timeS[i]! >= fromS; i--) {
    if (trace.timeS[i]! <= toS) indices.push(i);
  }
  return indices.reverse();
}

/**
 * Where the load over cubed speed, low in the air, first comes back for a second to what it was on the ground
 * before take-off. Without that reference, where it steps up. Null where speed or current is not logged.
 */
function groundLoadAt(
  recording: Recording,
  trace: PowerTrace,
  moments: PowerMoments,
  tail: readonly number[],
): number | null {
  const before = coefficients(recording, trace, between(trace, moments.startS, moments.takeOffS));
  const after = coefficients(recording, trace, tail);
  if (after.logs.length < 3 || after.logs.length < tail.length / 2) return null;
  if (before.logs.length < 3) {
    return levelRise(after.timeS, after.logs, SHORTEST_LEVEL_S, GROUND_RISE)?.atS ?? null;
  }
  const ground = median(before.logs) + Math.log(GROUND_SHARE);
  if (after.logs[0]! >= ground) return null;
  const firstS = firstLasting(after.timeS, after.logs, (log) => log >= ground, 1);
  return firstS ?? moments.endS - ROLL_OUT_S + RISE_AFTER_TOUCHDOWN_S;
}

/** Logarithm of load over cubed speed, where both are logged and the shaft turns. */
function coefficients(
  recording: Recording,
  trace: PowerTrace,
  indices: readonly number[],
): { readonly timeS: readonly number[]; readonly logs: readonly number[] } {
  const revs = workingChannel(recording, "shaftSpeed");
  if (revs === null || trace.basis === "speed") return { timeS: [], logs: [] };
  const turning = indices.filter((i) => revs[trace.firstRow + i]! > 0 && trace.load[i]! > 0);
  return {
    timeS: turning.map((i) => trace.timeS[i]!),
    logs: turning.map((i) => Math.log(trace.load[i]! / (revs[trace.firstRow + i]! / 1000) ** 3)),
  };
}

/** The throttle closed for the flare: load well below the approach's, after some seconds of approach. */
function throttleClosed(
  trace: PowerTrace,
  tail: readonly number[],
): { readonly startS: number; readonly endS: number } | null {
  const firstS = trace.timeS[tail[0] ?? 0]!;
  const approach = tail.filter((i) => trace.timeS[i]! <= firstS + APPROACH_S).map((i) => trace.load[i]!);
  if (approach.length < 3) return null;
  const level = FLARE_SHARE * median(approach);
  const later = tail.filter((i) => trace.timeS[i]! > firstS + SHORTEST_LEVEL_S);
  const times = later.map((i) => trace.timeS[i]!);
  const loads = later.map((i) => trace.load[i]!);
  const startS = firstLasting(times, loads, (load) => load <= level, SHORTEST_FLARE_S);
  if (startS === null) return null;
  const endS = times.find((atS, index) => atS > startS && loads[index]! > level) ?? times.at(-1)!;
  return { startS, endS };
}

/** First time from which a condition holds for `lastingS`, or null. */
function firstLasting(
  timeS: readonly number[],
  values: readonly number[],
  holds: (value: number) => boolean,
  lastingS: number,
): number | null {
  let sinceS = Number.NaN;
  for (const [index, value] of values.entries()) {
    if (!holds(value)) sinceS = Number.NaN;
    else if (Number.isNaN(sinceS)) sinceS = timeS[index]!;
    if (timeS[index]! - sinceS >= lastingS) return sinceS;
  }
  return null;
}

/**
 * Where the load first lasts near what taxiing out took, after an approach well below that; a tail that
 * never reaches it ends with the roll-out. Null where the two do not differ or nothing was taxied before.
 */
function taxiLoadAt(trace: PowerTrace, moments: PowerMoments, tail: readonly number[]): number | null {
  const out = between(trace, moments.startS, moments.takeOffS - 1)
    .map((i) => trace.load[i]!)
    .filter((load) => load < moments.flightLevel);
  const times = tail.map((i) => trace.timeS[i]!);
  const loads = tail.map((i) => trace.load[i]!);
  const approach = loads.filter((_, index) => times[index]! <= times[0]! + APPROACH_S);
  if (out.length < 3 || approach.length < 3) return null;
  const taxi = TAXI_SHARE * quantile(out, 0.7);
  if (median(approach) >= taxi) return null;
  const taxiS = firstLasting(times, loads, (load) => load >= taxi, 2);
  if (taxiS !== null) return taxiS;
  const logs = loads.map((load) => Math.log(Math.max(load, 1e-3)));
  const rise = levelRise(times, logs, SHORTEST_LEVEL_S, GROUND_RISE);
  return rise?.atS ?? moments.endS - ROLL_OUT_S;
}
