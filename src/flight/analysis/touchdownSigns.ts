import { median, quantile } from "../../base/statistics/index.ts";
import type { Recording } from "../../log/recording/index.ts";
import { workingChannel } from "./channelOrWhy.ts";
import { levelRise } from "./levelRise.ts";
import type { PowerTrace } from "./powerTrace.ts";

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

/** A throttle closed for the flare is this far below the approach's load, for this long. */
const FLARE_SHARE = 0.55;
const SHORTEST_FLARE_S = 1.5;
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
/** A tail without a ground part ends this long after touchdown: the roll-out. */
const ROLL_OUT_S = 3;
/** The load rises as the aircraft slows down after it has touched. */
export const RISE_AFTER_TOUCHDOWN_S = 1.5;

/** Indices into the trace from one time to another, both included. */
export function between(trace: PowerTrace, fromS: number, toS: number): readonly number[] {
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
export function groundLoadAt(
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
export function throttleClosed(
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
export function taxiLoadAt(trace: PowerTrace, moments: PowerMoments, tail: readonly number[]): number | null {
  const out = between(trace, moments.startS, moments.takeOffS - 1)
    .map((i) => trace.load[i]!)
    .filter((load) => load < moments.flightLevel);
  if (out.length < 3) return null;
  const taxiOut = quantile(out, 0.7);
  // The last of the descent may still take more than taxiing: the approach begins below that.
  const lowFromS = firstLasting(
    tail.map((i) => trace.timeS[i]!),
    tail.map((i) => trace.load[i]!),
    (load) => load < TAXI_SHARE * taxiOut,
    SHORTEST_LEVEL_S,
  );
  if (lowFromS === null || lowFromS > moments.powerEndS + APPROACH_S) return null;
  const low = tail.filter((i) => trace.timeS[i]! >= lowFromS);
  const times = low.map((i) => trace.timeS[i]!);
  const loads = low.map((i) => trace.load[i]!);
  const approach = loads.filter((_, index) => times[index]! <= times[0]! + APPROACH_S);
  if (approach.length < 3 || median(approach) >= TAXI_SHARE * taxiOut) return null;
  const taxi = Math.min(TAXI_SHARE * taxiOut, Math.sqrt(Math.max(median(approach), 0) * taxiOut));
  return firstLasting(times, loads, (load) => load >= taxi, 2) ?? riseOrRollOut(moments, times, loads);
}

/** Taxiing in may take less than taxiing out: then where the load steps up, else the end is the roll-out. */
function riseOrRollOut(moments: PowerMoments, times: readonly number[], loads: readonly number[]): number {
  const logs = loads.map((load) => Math.log(Math.max(load, 1e-3)));
  return levelRise(times, logs, SHORTEST_LEVEL_S, GROUND_RISE)?.atS ?? moments.endS - ROLL_OUT_S;
}
