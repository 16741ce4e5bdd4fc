import { atLeast, between, type Quantity, unknown } from "../../base/quantity/index.ts";
import { workingChannel } from "./channelOrWhy.ts";
import { type FlightContext, runningRows } from "./flightContext.ts";
import type { FlightShape } from "./flightShape.ts";
import type { RunGroup } from "./runGroups.ts";
import {
  BENCH_RUN,
  ENDS_UNDER_POWER,
  LOG_ENDS_IN_FLIGHT,
  NO_RUNNING_CHANNEL,
  NOTHING_RUNS,
  STARTS_UNDER_POWER,
  TAKE_OFF_BEFORE_LOG,
  TOUCHDOWN_FROM_POWER,
} from "./sentences.ts";
import { switchHoles } from "./switchHoles.ts";
import { unseenCurrent } from "./unseenCurrent.ts";

/** Why a window without a flight has no flight measures. */
export function whyNoFlight({ group, running }: FlightContext): string {
  if (running === null) return NO_RUNNING_CHANNEL;
  return group === null ? NOTHING_RUNS : BENCH_RUN;
}

/** True of measures of a log that shows the motor at rest throughout; false where nothing can tell. */
export function isAtRestThroughout({ motorRunTimeS }: { readonly motorRunTimeS: Quantity }): boolean {
  return motorRunTimeS.value === null && motorRunTimeS.why === NOTHING_RUNS;
}

/** flightTimeS: take-off to touchdown. A bound where the log holds only one of them. */
export function flightTime(context: FlightContext): Quantity {
  const { shape } = context;
  if (shape === null) return unknown("s", whyNoFlight(context));
  const { takeOff, touchdown } = shape;
  const value = touchdown.value - takeOff.value;
  const low = Math.max(0, touchdown.low - takeOff.high);
  const why = whyFlightIsCut(shape);
  if (why !== null) return atLeast(value, low, "s", "measured", why);
  const high = touchdown.high - takeOff.low;
  if (shape.seenBy !== "power") return between(value, low, high, "s", "measured");
  return between(value, low, high, "s", "estimated", { bound: "interval", why: TOUCHDOWN_FROM_POWER });
}

/** Why take-off or touchdown lies outside the log, or null. */
export function whyFlightIsCut(shape: FlightShape): string | null {
  if (!shape.isTakeOffLogged) return TAKE_OFF_BEFORE_LOG;
  return shape.isTouchdownLogged ? null : LOG_ENDS_IN_FLIGHT;
}

/** From the stick's first move to the threshold of running, seconds. */
const THRESHOLD_S = 0.5;

/**
 * motorRunTimeS: running time inside startS..endS, pauses left out. Interval: half a step at each change, and the
 * whole of a hole in which the motor started or stopped.
 */
export function motorRunTime(context: FlightContext): Quantity {
  const { group, recording, startsUnderPower, endsUnderPower } = context;
  if (group === null) return unknown("s", whyNoFlight(context));
  const value = group.runs.reduce((sum, run) => sum + run.endS - run.startS, 0);
  const steps = recording.stepS * Math.sqrt((2 * group.runs.length) / 3);
  const halfWidth = Math.hypot(steps, THRESHOLD_S);
  const { countedS, leftOutS } = secondsInHoles(context, group);
  // Without shaft speed nothing tells whether the motor ran while its current was missing.
  const isTold = workingChannel(recording, "shaftSpeed") !== null;
  const untoldS = isTold ? 0 : unseenCurrent(recording, runningRows(context)).lostS;
  const low = Math.max(0, value - halfWidth - countedS - untoldS);
  if (startsUnderPower) return atLeast(value, low, "s", "measured", STARTS_UNDER_POWER);
  if (endsUnderPower) return atLeast(value, low, "s", "measured", ENDS_UNDER_POWER);
  return between(value, low, value + halfWidth + leftOutS, "s", "measured");
}

/** Seconds of the holes in which the motor started or stopped, by whether the runs count them. */
function secondsInHoles(
  { recording, running }: FlightContext,
  { rows, runs }: RunGroup,
): { readonly countedS: number; readonly leftOutS: number } {
  let countedS = 0;
  let leftOutS = 0;
  for (const hole of running === null ? [] : switchHoles(recording, rows, running)) {
    const inRunsS = runs.reduce(
      (sum, run) => sum + Math.max(0, Math.min(run.endS, hole.endS) - Math.max(run.startS, hole.startS)),
      0,
    );
    countedS += inRunsS;
    leftOutS += hole.endS - hole.startS - inRunsS;
  }
  return { countedS, leftOutS };
}
