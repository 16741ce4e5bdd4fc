import { mean, sampleStandardDeviation } from "../../../src/base/statistics/index.ts";
import type { LogbookEntry } from "../../../src/season/logbook/index.ts";
import { setTimer } from "../../../src/season/timer/index.ts";
import {
  type FlightSpec,
  LOG_STYLES,
  type Random,
  randomAircraft,
  randomFlightSpec,
  type SimulatedFlight,
  seededRandom,
  simulateFlight,
  writeLog,
} from "../../generator/index.ts";
import { aircraftOf, bookFlights } from "../trends/bookFlights.ts";

const RESERVE_PCT = 25;
const GO_AROUND_S = 30;
const Z95 = 1.6448536269514722;
/** The current goes about as the cube of the duty: a spread of the duty a third of the spread wanted. */
const RATE_POWER = 3;
/** Flights logged before the later ones are flown. */
export const COUNTS: readonly number[] = [1, 3, 6];
const LATER = 12;

/** What a pilot's logs gave and how later flights flown to it went. */
export interface LoggedPilot {
  readonly count: number;
  readonly touchdownByS: number | null;
  /** By the charge alone. */
  readonly chargeS: number | null;
  readonly kept: number;
  readonly later: number;
  /** Against the length of a pilot who knows the mean and spread of the same flights. */
  readonly length: number;
}

interface Demand {
  /** True charge after the climb per second, of the climb and on the ground. */
  readonly rateMahPerS: number;
  readonly climbMah: number;
  readonly climbS: number;
  readonly groundMah: number;
}

/** One pilot through written logs: the flights are simulated, logged, read, analysed and counted like any others. */
export function loggedPilot(spread: number, seed: number, counts = COUNTS): readonly LoggedPilot[] {
  const most = Math.max(...counts);
  const random = seededRandom(seed).fork("pilot");
  const aircraft = randomAircraft(random.fork("aircraft"), random.pick(["packCurrent", "motorCurrent"]));
  const first = randomFlightSpec(seed, { aircraft, departures: { slowProbe: true } });
  const fly = (flight: number) => simulateFlight(specOf(first, spread, 1000 * seed + flight, random));
  const logged = Array.from({ length: most }, (_, flight) => fly(flight));
  const file = aircraftOf(JSON.stringify(logged[0]!.facts));
  const entries = logged.flatMap((one, index) =>
    bookFlights(writeLog(one.logged, LOG_STYLES.plainWords), file, [`flight-${index + 1}`], {
      ambientC: Math.round(one.statedAmbientC),
      pack: "A",
    }),
  );
  const demands = Array.from({ length: LATER }, (_, flight) => demandOf(fly(most + flight)));
  const known = [...logged.map(demandOf), ...demands];
  return counts.map((count) =>
    outcome(entries.slice(0, count), demands, known, file.facts.pack.capacityMah!),
  );

  function outcome(
    book: readonly LogbookEntry[],
    later: readonly Demand[],
    all: readonly Demand[],
    capacityMah: number,
  ): LoggedPilot {
    const next = { pack: "A", ambientC: null, reservePct: RESERVE_PCT, startPct: null };
    const timer = setTimer(book, file.facts, next, null);
    const chargeS = timer.limits[0]?.touchdownByS ?? null;
    const touchdownByS = timer.touchdownByS;
    const kept = later.filter((one) => chargeS !== null && isKept(one, chargeS, capacityMah)).length;
    const length = (chargeS ?? 0) / knownLengthS(all, capacityMah);
    return { count: book.length, touchdownByS, chargeS, kept, later: later.length, length };
  }
}

function specOf(first: FlightSpec, spread: number, seed: number, random: Random): FlightSpec {
  const drawn = randomFlightSpec(seed, { aircraft: first.aircraft });
  const { airframe } = first.aircraft;
  const cruiseDuty = Math.min(0.97, airframe.cruiseDuty * Math.exp((spread / RATE_POWER) * random.normal()));
  const [script] = drawn.sorties;
  return {
    ...drawn,
    aircraft: { ...first.aircraft, airframe: { ...airframe, cruiseDuty } },
    pack: { ...drawn.pack, startCharge: 1, resistanceFactor: 1 },
    sorties: script === undefined || script === "bench" ? drawn.sorties : [{ ...script, touchAndGo: false }],
    sensors: { ...first.sensors, rateHz: 4 },
    stated: first.stated,
  };
}

/** Climb: the scripted take-off and climb of 17 s. */
const CLIMB_S = 17;

function demandOf({ truth, logged }: SimulatedFlight): Demand {
  const [sortie] = truth.sorties;
  if (!sortie || sortie.takeOffS === null || sortie.flightTimeS === null || sortie.flightChargeMah === null) {
    throw new Error("a simulated flight without a whole flight in it");
  }
  const climbMah = chargeOf(logged, sortie.takeOffS, sortie.takeOffS + CLIMB_S);
  return {
    climbMah,
    climbS: CLIMB_S,
    rateMahPerS: (sortie.flightChargeMah - climbMah) / (sortie.flightTimeS - CLIMB_S),
    groundMah: sortie.chargeUsedMah - sortie.flightChargeMah,
  };
}

/** From exact amps with the sensor's gain out again would need the gain: the climb's share of it is negligible. */
function chargeOf(logged: SimulatedFlight["logged"], startS: number, endS: number): number {
  let sum = 0;
  for (let row = 1; row < logged.rows; row += 1) {
    if (logged.timeS[row]! <= startS || logged.timeS[row]! > endS) continue;
    sum += (logged.exactCurrentA[row]! * (logged.timeS[row]! - logged.timeS[row - 1]!)) / 3.6;
  }
  return sum;
}

function isKept(demand: Demand, touchdownS: number, capacityMah: number): boolean {
  const used = demand.groundMah + demand.climbMah + demand.rateMahPerS * (touchdownS - demand.climbS);
  return used + (GO_AROUND_S * demand.climbMah) / demand.climbS <= capacityMah * (1 - RESERVE_PCT / 100);
}

function knownLengthS(demands: readonly Demand[], capacityMah: number): number {
  const logs = demands.map((one) => Math.log(one.rateMahPerS));
  const rate = Math.exp(mean(logs) + Z95 * sampleStandardDeviation(logs));
  const of = (pick: (one: Demand) => number) => mean(demands.map(pick));
  const climbMah = of((one) => one.climbMah);
  const usable =
    capacityMah * (1 - RESERVE_PCT / 100) - of((one) => one.groundMah) - (GO_AROUND_S * climbMah) / CLIMB_S;
  return CLIMB_S + (usable - climbMah) / rate;
}
