import type { Recording } from "../../log/recording/index.ts";
import { type AirborneSense, airborneSenses, couldShowFlight } from "./airborne.ts";
import { flightPowerLevels, type PowerStretch, stretchesAbove } from "./flightPower.ts";
import type { MotorRunning } from "./motorRunning.ts";
import { type PowerTrace, powerTrace } from "./powerTrace.ts";
import type { RunGroup } from "./runGroups.ts";
import { switchHoles } from "./switchHoles.ts";
import { type TimeSpan, takeOffAt } from "./takeOff.ts";
import { touchdownFromPower } from "./touchdownFromPower.ts";
import { airborneSpan, touchdownSeen } from "./touchdownSeen.ts";

/** Take-off and touchdown of one flight. Seconds since the first row. */
export interface FlightShape {
  readonly takeOff: TimeSpan;
  readonly touchdown: TimeSpan;
  /** False when the log begins after take-off power, or ends before touchdown could be seen. */
  readonly isTakeOffLogged: boolean;
  readonly isTouchdownLogged: boolean;
  /** What decided the touchdown. */
  readonly seenBy: AirborneSense["channel"] | "power";
  readonly flightPowerEndS: number;
  readonly stretches: readonly PowerStretch[];
  readonly trace: PowerTrace;
  readonly level: number;
  readonly senses: readonly AirborneSense[];
}

/** A shorter time at flight power in all is a bench run, unless a channel shows the aircraft airborne. */
const SHORTEST_FLIGHT_S = 30;
/** A burst of power on the ground is shorter than this. */
const SUSTAINED_S = 12;
/** Flight power this long after a landing approach is flight again, not a burst while taxiing. */
const SHORTEST_RETURN_S = 5;
const CLOSE_RETURN_S = 10;
export const BRIDGED_DIP_S = 3;
const EDGE_S = 1;

/** The flight in a group of runs, or null for a bench run: nothing here is sustained flight power. */
export function flightShape(
  recording: Recording,
  group: RunGroup,
  running: MotorRunning,
): FlightShape | null {
  const { rows, startS, endS } = group;
  const trace = powerTrace(recording, rows, running.current?.idle ?? 0);
  const { level, stretches } = flightPower(trace);
  const senses = airborneSenses(recording, rows, startS, endS);
  const airborne = airborneSpan(recording, rows, senses);
  if (airborne === null && (couldShowFlight(recording, rows) || !isSustained(stretches))) return null;
  const takeOff = takeOffAt(trace, level, stretches, airborne?.startS ?? null, SUSTAINED_S);
  const powerEndS = lastPowerEnd(stretches, takeOff.value);
  const lastS = trace.timeS.at(-1)!;
  const isTouchdownLogged = (airborne?.endS ?? endS) < lastS - EDGE_S;
  const seen = airborne
    ? touchdownSeen(recording, rows, airborne)
    : reachingTo(
        touchdownFromPower(recording, trace, {
          startS,
          takeOffS: takeOff.value,
          powerEndS,
          endS,
          flightLevel: level,
        }),
        latestEndS(recording, group, running),
      );
  const touchdown = isTouchdownLogged ? seen : lastFlown(airborne?.endS ?? powerEndS);
  return {
    takeOff,
    touchdown,
    isTakeOffLogged: takeOff.value > trace.timeS[0]! + EDGE_S,
    isTouchdownLogged,
    seenBy: airborne?.sense.channel ?? "power",
    flightPowerEndS: isUnseenFrom(trace, powerEndS)
      ? Math.max(touchdown.value, isTouchdownLogged ? 0 : endS)
      : Math.min(powerEndS, touchdown.value),
    stretches,
    trace,
    level,
    senses,
  };
}

const UNSEEN_S = 5;

/** True where the load is missing from about `atS` on: flight power then did not end there. */
function isUnseenFrom({ timeS, isMissing }: PowerTrace, atS: number): boolean {
  const first = timeS.findIndex((time, i) => time >= atS && isMissing[i] === 1);
  return first >= 0 && timeS[first]! <= atS + UNSEEN_S;
}

/** When the motor may last have run: the end of a hole in which it stopped, else the end of its last run. */
function latestEndS(recording: Recording, { rows, endS }: RunGroup, running: MotorRunning): number {
  const around = switchHoles(recording, rows, running).find(
    (hole) => hole.startS <= endS && hole.endS > endS,
  );
  return around?.endS ?? endS;
}

function reachingTo(touchdown: TimeSpan, latestS: number): TimeSpan {
  return { ...touchdown, high: Math.max(touchdown.high, latestS) };
}

/** Without a touchdown the flight is known to last at least until it was last seen. */
function lastFlown(atS: number): TimeSpan {
  return { value: atS, low: atS, high: atS };
}

/** The emptiest level parts flight from taxi, unless only the lowest leaves a flight at all. */
function flightPower(trace: PowerTrace): Pick<FlightShape, "level" | "stretches"> {
  const { emptiest, lowest } = flightPowerLevels(trace);
  const at = (level: number) => ({ level, stretches: stretchesAbove(trace, level, BRIDGED_DIP_S) });
  const usual = at(emptiest);
  const low = isSustained(usual.stretches) ? usual : at(lowest);
  return isSustained(low.stretches) ? low : usual;
}

function isSustained(stretches: readonly PowerStretch[]): boolean {
  const sustained = stretches.filter((one) => one.endS - one.startS >= SUSTAINED_S);
  return sustained.reduce((sum, one) => sum + one.endS - one.startS, 0) >= SHORTEST_FLIGHT_S;
}

/** End of the last stretch that is long enough for flight, or follows one closely (power added on final). */
function lastPowerEnd(stretches: readonly PowerStretch[], takeOffS: number): number {
  let endS = takeOffS;
  for (const one of stretches) {
    const isFlight = one.endS - one.startS >= SHORTEST_RETURN_S || one.startS - endS <= CLOSE_RETURN_S;
    if (one.endS > takeOffS && isFlight) endS = one.endS;
  }
  return endS;
}
