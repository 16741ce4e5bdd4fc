import type { TrueAirframe } from "./aircraft.ts";
import type { Random } from "./random.ts";

/** One stretch of a flight as it is flown. */
export interface Leg {
  readonly kind:
    | "rest"
    | "runUp"
    | "idle"
    | "taxi"
    | "takeOff"
    | "climb"
    | "circuit"
    | "approach"
    | "flare"
    | "roll";
  readonly lengthS: number;
  /** Duty that the throttle moves to, 0 (stopped) to 1. */
  readonly duty: number;
  /** Fastest change of the duty, 1/s. */
  readonly slewPerS: number;
  readonly endSpeedMS: number;
  readonly endAltitudeM: number;
  /** Aircraft off the ground at the end of this leg. */
  readonly isAirborne: boolean;
}

export interface ScriptOptions {
  /** From take-off power to touchdown, about. */
  readonly flightS: number;
  readonly restBeforeS: number;
  readonly restAfterS: number;
  readonly hasRunUp: boolean;
  readonly runUpHoldS: number;
  readonly touchAndGo: boolean;
  /** A low pass at taxi power half way. */
  readonly lowPass: boolean;
  readonly taxiOutS: number;
  readonly taxiBackS: number;
  /** Approach at taxi power before the flare. */
  readonly approachS: number;
  /** The pilot closes the throttle to idle for the flare and the roll-out. */
  readonly closesThrottleToLand: boolean;
  /** Spread of the throttle in the circuits: 1 is lively. */
  readonly vigour: number;
}

export const USUAL_SCRIPT: ScriptOptions = {
  flightS: 330,
  restBeforeS: 15,
  restAfterS: 20,
  hasRunUp: true,
  runUpHoldS: 5,
  touchAndGo: false,
  lowPass: true,
  taxiOutS: 22,
  taxiBackS: 28,
  approachS: 17,
  closesThrottleToLand: true,
  vigour: 1,
};

const IDLE_DUTY = 0.2;
const CIRCUIT_ALTITUDE_M = 45;

function leg(kind: Leg["kind"], lengthS: number, duty: number, more: Partial<Leg> = {}): Leg {
  return { kind, lengthS, duty, slewPerS: 0.8, endSpeedMS: 0, endAltitudeM: 0, isAirborne: false, ...more };
}

function beforeFlight(options: ScriptOptions, airframe: TrueAirframe, random: Random): Leg[] {
  const legs = [leg("rest", options.restBeforeS, 0)];
  if (options.hasRunUp) {
    legs.push(leg("runUp", 2 + options.runUpHoldS, 1, { slewPerS: 0.6 }), leg("idle", 9, IDLE_DUTY));
  }
  for (let left = options.taxiOutS; left > 0; left -= 6) {
    const duty = airframe.taxiDuty + random.between(-0.03, 0.03);
    legs.push(leg("taxi", Math.min(6, left), duty, { endSpeedMS: 2.5 }));
  }
  legs.push(leg("idle", 4, IDLE_DUTY));
  return legs;
}

function takeOff(airframe: TrueAirframe, random: Random): Leg[] {
  const duty = random.chance(0.5) ? 1 : random.between(0.94, 0.99);
  const up = { isAirborne: true, slewPerS: 0.7 };
  const { liftOffMS, cruiseMS } = airframe;
  return [
    leg("takeOff", 4.5, duty, { endSpeedMS: liftOffMS, slewPerS: 0.7 }),
    leg("takeOff", 3.5, duty, { ...up, endSpeedMS: 1.15 * liftOffMS, endAltitudeM: 6 }),
    leg("climb", 9, random.between(0.86, 0.92), { ...up, endSpeedMS: 0.85 * cruiseMS, endAltitudeM: 38 }),
  ];
}

/** Straights, turns, dives and climbs of 3 to 9 s, `lengthS` in all. */
function circuits(lengthS: number, airframe: TrueAirframe, vigour: number, random: Random): Leg[] {
  const legs: Leg[] = [];
  let left = lengthS;
  while (left > 1) {
    const length = Math.min(left, random.between(3, 9));
    const lift = random.between(-1, 1) * vigour;
    const duty = airframe.cruiseDuty + 0.13 * lift + 0.03 * random.normal();
    legs.push(
      leg("circuit", length, Math.min(1, Math.max(0.45, duty)), {
        isAirborne: true,
        slewPerS: random.between(0.3, 1.2),
        endSpeedMS: airframe.cruiseMS * (1 - 0.12 * lift),
        endAltitudeM: CIRCUIT_ALTITUDE_M + 18 * lift,
      }),
    );
    left -= length;
  }
  return legs;
}

/** Down at taxi power, to `lowM`; the last leg ends at that altitude. */
function approach(options: ScriptOptions, airframe: TrueAirframe, lowM: number, random: Random): Leg[] {
  const duty = airframe.taxiDuty + random.between(-0.02, 0.03);
  const speed = { endSpeedMS: 1.2 * airframe.liftOffMS, isAirborne: true };
  return [
    leg("approach", 0.5 * options.approachS, duty, { ...speed, endAltitudeM: 18 + lowM / 2 }),
    leg("approach", 0.5 * options.approachS, duty, { ...speed, endAltitudeM: lowM }),
  ];
}

function land(options: ScriptOptions, airframe: TrueAirframe, random: Random): Leg[] {
  const duty = options.closesThrottleToLand ? IDLE_DUTY : airframe.taxiDuty;
  return [
    ...approach(options, airframe, 2, random),
    leg("flare", 2.5, duty, { endSpeedMS: airframe.liftOffMS }),
    leg("roll", 4, duty, { endSpeedMS: 3 }),
  ];
}

/** The part from take-off power to the end of the last roll-out. */
function inTheAir(options: ScriptOptions, airframe: TrueAirframe, random: Random): Leg[] {
  const up = takeOff(airframe, random);
  const down = land(options, airframe, random);
  const rollS = 4;
  const middle: Leg[] = [];
  if (options.lowPass) {
    middle.push(...approach(options, airframe, 5, random), leg("climb", 6, 0.9, airborneClimb(airframe)));
  }
  if (options.touchAndGo) middle.push(...land(options, airframe, random), ...takeOff(airframe, random));
  const spentS = [...up, ...middle, ...down].reduce((sum, each) => sum + each.lengthS, -rollS);
  const circuitS = Math.max(20, options.flightS - spentS);
  const first = circuits(0.55 * circuitS, airframe, options.vigour, random);
  const second = circuits(0.45 * circuitS, airframe, options.vigour, random);
  return [...up, ...first, ...middle, ...second, ...down];
}

function airborneClimb(airframe: TrueAirframe): Partial<Leg> {
  return { isAirborne: true, endSpeedMS: 0.9 * airframe.cruiseMS, endAltitudeM: 30 };
}

/** Rest, run-up, taxi, flight, taxi back, rest. */
export function flightScript(options: ScriptOptions, airframe: TrueAirframe, random: Random): Leg[] {
  const legs = [...beforeFlight(options, airframe, random), ...inTheAir(options, airframe, random)];
  for (let left = options.taxiBackS; left > 0; left -= 7) {
    const duty = airframe.taxiDuty + random.between(-0.03, 0.03);
    legs.push(leg("taxi", Math.min(7, left), duty, { endSpeedMS: 2.5 }));
  }
  legs.push(leg("rest", options.restAfterS, 0));
  return legs;
}

/** A run on the ground: steps of throttle with idle between, full throttle twice. */
export function benchScript(restBeforeS = 15, restAfterS = 60): Leg[] {
  const legs = [leg("rest", restBeforeS, 0)];
  for (const duty of [0.4, 0.6, 0.8, 1, 0.7, 1]) {
    legs.push(leg(duty === 1 ? "runUp" : "taxi", duty === 1 ? 8 : 6, duty), leg("idle", 7, IDLE_DUTY));
  }
  legs.push(leg("rest", restAfterS, 0));
  return legs;
}
