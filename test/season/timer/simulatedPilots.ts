import { normalCdf } from "../../../src/base/statistics/index.ts";
import { type ChargeConditions, chargeLimit, type LoggedLoad } from "../../../src/season/timer/index.ts";

/** Spread of a pilot's charge rate from flight to flight (relative, one standard deviation), in equal parts. */
export const SPREADS = [0.05, 0.08, 0.1, 0.12, 0.15, 0.2, 0.25] as const;
export const LOGGED_FLIGHTS = [1, 3, 6, 12] as const;
const LATER_FLIGHTS = 40;
const Z95 = 1.6448536269514722;

/** mulberry32: a small public-domain generator, so that the figures can be repeated from the seed. */
export function randomOf(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

function normalOf(random: () => number): () => number {
  return () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}

interface Pilot {
  readonly meanLogRate: number;
  readonly spread: number;
  readonly climbS: number;
  readonly climbMahPerS: number;
  readonly capacityMah: number;
}

/** A pilot with a pack that gives 3 to 12 minutes: the timer is often shorter or longer than the logs. */
function pilotOf(spread: number, random: () => number): Pilot {
  const rate = 3 + 12 * random();
  return {
    meanLogRate: Math.log(rate),
    spread,
    climbS: 12 + 18 * random(),
    climbMahPerS: rate * (1.5 + random()),
    capacityMah: rate * 60 * (4.5 + 9 * random()),
  };
}

const CONDITIONS = { health: 1, startShare: 1, reserveShare: 0.25, gainStandardDeviation: 0 };
const GROUND_MAH_SHARE = 0.02;

/** What a log of 4 to 7 minutes says: climb of its own, then the flight's rate (lengths do not enter the rate). */
function loggedLoad(pilot: Pilot, normal: () => number, index: number): LoggedLoad {
  return {
    flight: String(index),
    climbS: pilot.climbS,
    climbChargeMah: pilot.climbS * pilot.climbMahPerS * Math.exp(0.05 * normal()),
    rateMahPerS: Math.exp(pilot.meanLogRate + pilot.spread * normal()),
    groundChargeMah: pilot.capacityMah * GROUND_MAH_SHARE,
    approachS: 40,
    peakCurrentA: 60,
  };
}

/** Charge a later flight uses when it lands at `touchdownS`, climb and rate drawn anew, against what it may use. */
function isKept(pilot: Pilot, touchdownS: number, normal: () => number): boolean {
  const climb = pilot.climbS * pilot.climbMahPerS * Math.exp(0.05 * normal());
  const rate = Math.exp(pilot.meanLogRate + pilot.spread * normal());
  const used = climb + rate * Math.max(0, touchdownS - pilot.climbS);
  return used <= allowance(pilot);
}

/** Capacity less reserve, ground and the go-around (30 s at the mean climb rate). */
function allowance(pilot: Pilot): number {
  return pilot.capacityMah * (1 - CONDITIONS.reserveShare - GROUND_MAH_SHARE) - 30 * pilot.climbMahPerS;
}

/** Length a pilot would fly who knows the true mean and spread: 19 of 20 flights keep the allowance. */
function knownLength(pilot: Pilot): number {
  const rate = Math.exp(pilot.meanLogRate + Z95 * pilot.spread);
  return pilot.climbS + (allowance(pilot) - pilot.climbS * pilot.climbMahPerS) / rate;
}

export interface PilotScore {
  readonly spread: number;
  readonly logged: number;
  readonly kept: number;
  /** Share of pilots for whom 95 % of all flights to the cautious touchdown keep the allowance. */
  readonly cautiousKept: number;
  readonly medianLength: number;
  /** Touchdown over the length of a pilot who knows, one a pilot, ascending. */
  readonly lengths: readonly number[];
}

/** Scores of `pilots` pilots of one spread after `logged` flights; kept shares over all later flights. */
export function scorePilots(spread: number, logged: number, pilots: number, seed: number): PilotScore {
  const random = randomOf(seed);
  const normal = normalOf(random);
  const lengths: number[] = [];
  let kept = 0;
  let cautious = 0;
  for (let i = 0; i < pilots; i += 1) {
    const pilot = pilotOf(spread, random);
    const loads = Array.from({ length: logged }, (_, index) => loggedLoad(pilot, normal, index));
    const conditions: ChargeConditions = { ...CONDITIONS, capacityMah: pilot.capacityMah };
    const limit = chargeLimit(loads, conditions);
    lengths.push(limit.touchdownByS / knownLength(pilot));
    kept += shareKept(pilot, limit.touchdownByS, normal);
    cautious += trueShareKept(pilot, limit.cautiousTouchdownByS) >= 0.95 ? 1 : 0;
  }
  lengths.sort((one, other) => one - other);
  return {
    spread,
    logged,
    kept: kept / pilots,
    cautiousKept: cautious / pilots,
    medianLength: lengths[Math.floor(pilots / 2)] ?? Number.NaN,
    lengths,
  };
}

/** Share of all flights to `touchdownS` that keep the allowance, from the pilot's true rate (mean climb). */
function trueShareKept(pilot: Pilot, touchdownS: number): number {
  const climbMah = pilot.climbS * pilot.climbMahPerS;
  const largestRate = (allowance(pilot) - climbMah) / (touchdownS - pilot.climbS);
  return normalCdf((Math.log(largestRate) - pilot.meanLogRate) / pilot.spread);
}

function shareKept(pilot: Pilot, touchdownS: number, normal: () => number): number {
  let kept = 0;
  for (let flight = 0; flight < LATER_FLIGHTS; flight += 1) kept += isKept(pilot, touchdownS, normal) ? 1 : 0;
  return kept / LATER_FLIGHTS;
}
