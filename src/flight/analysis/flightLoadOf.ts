import { medianInPlace, withScratch } from "../../base/statistics/index.ts";
import { workingChannel } from "./channelOrWhy.ts";
import { chargeBetween, usedCharge } from "./charge.ts";
import type { FlightContext } from "./flightContext.ts";
import type { FlightLoad } from "./flightLoad.ts";
import type { FlightShape } from "./flightShape.ts";
import { meanDriverA2 } from "./heatTrace.ts";
import type { Identified } from "./identifiedMeasures.ts";
import type { PowerTrace } from "./powerTrace.ts";
import { rowsWithin } from "./rowsBetween.ts";

/** Climb is over when the load has been below this multiple of the flight's median load for 2 s. */
const CLIMB_LOAD = 1.2;
const SETTLED_S = 2;
const SHORTEST_CLIMB_S = 5;
const LONGEST_CLIMB_S = 60;

/** What a whole flight asked of the pack; null for a bench run, a cut flight, or without current. */
export function flightLoadOf(context: FlightContext, identified: Identified): FlightLoad | null {
  const { shape, recording, rows, facts } = context;
  if (shape === null || !shape.isTakeOffLogged || !shape.isTouchdownLogged) return null;
  const { takeOff, touchdown } = shape;
  const climbEndS = climbEnd(shape);
  const climb = chargeBetween(recording, takeOff.value, climbEndS, facts).value;
  const rest = chargeBetween(recording, climbEndS, touchdown.value, facts).value;
  const used = usedCharge(recording, rows, facts, context).value;
  const surelyFlown = chargeBetween(recording, takeOff.high, touchdown.low, facts).value;
  const current = currentOver(context, takeOff.value, touchdown.value);
  if (climb === null || rest === null || used === null || surelyFlown === null || current === null)
    return null;
  const approachEndS = shape.seenBy === "power" ? touchdown.high : touchdown.value;
  return {
    climbS: climbEndS - takeOff.value,
    climbChargeMah: climb,
    rateMahPerS: rest / (touchdown.value - climbEndS),
    groundChargeMah: used - surelyFlown,
    approachS: approachEndS - shape.flightPowerEndS,
    ...current,
    meanDriverA2: meanDriverA2(context, identified, takeOff.value, touchdown.value),
  };
}

function climbEnd({ trace, takeOff, touchdown, flightPowerEndS }: FlightShape): number {
  const typicalLoad = medianLoad(trace, takeOff.value, flightPowerEndS);
  const latestS = Math.min(takeOff.value + LONGEST_CLIMB_S, (takeOff.value + touchdown.value) / 2);
  if (typicalLoad === null) return latestS;
  const climbLoad = CLIMB_LOAD * typicalLoad;
  let belowSinceS = Number.NaN;
  for (let i = 0; i < trace.load.length && trace.timeS[i]! <= latestS; i++) {
    const atS = trace.timeS[i]!;
    if (atS < takeOff.value + SHORTEST_CLIMB_S) continue;
    if (trace.load[i]! >= climbLoad) belowSinceS = Number.NaN;
    else if (Number.isNaN(belowSinceS)) belowSinceS = atS;
    if (atS - belowSinceS >= SETTLED_S) return belowSinceS;
  }
  return latestS;
}

function medianLoad({ timeS, load }: PowerTrace, fromS: number, toS: number): number | null {
  return withScratch(load.length, (loads) => {
    let count = 0;
    for (let i = 0; i < load.length; i++)
      if (timeS[i]! >= fromS && timeS[i]! <= toS) loads[count++] = load[i]!;
    return count === 0 ? null : medianInPlace(loads.subarray(0, count));
  });
}

/** Largest and mean square current between two times; the mean by time, on the straight line between rows. */
function currentOver(
  { recording }: FlightContext,
  startS: number,
  endS: number,
): Pick<FlightLoad, "peakCurrentA" | "meanSquareCurrentA2"> | null {
  const amps = workingChannel(recording, "current");
  if (amps === null) return null;
  const { firstRow, lastRow } = rowsWithin(recording.timeS, startS, endS);
  let peakCurrentA = Number.NEGATIVE_INFINITY;
  let squares = 0;
  let seconds = 0;
  let before = -1;
  for (let row = firstRow; row <= lastRow; row++) {
    const value = amps[row]!;
    if (Number.isNaN(value)) continue;
    if (value > peakCurrentA) peakCurrentA = value;
    if (before >= 0) {
      const stepS = recording.timeS[row]! - recording.timeS[before]!;
      squares += ((value * value + value * amps[before]! + amps[before]! * amps[before]!) / 3) * stepS;
      seconds += stepS;
    }
    before = row;
  }
  return seconds > 0 ? { peakCurrentA, meanSquareCurrentA2: squares / seconds } : null;
}
