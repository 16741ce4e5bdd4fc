import { parseAircraftFile, type ReadAircraft } from "../../../src/aircraft/index.ts";
import type { PlanMeasure } from "../../../src/flight/prediction/index.ts";
import { predictStaticPowerCoefficient } from "../../../src/physics/index.ts";
import {
  ALL_DEPARTURES,
  randomFlightSpec,
  type SimulatedFlight,
  seededRandom,
  simulateFlight,
  type TrueAircraft,
} from "../../generator/index.ts";

/** What the simulator says of one measure that a plan predicts; null where it does not say. */
export type TrueValues = Partial<Record<PlanMeasure, number | null>>;

/** The first flight of a random aircraft and the truth of another one, on another day with another pack state. */
export interface RandomPlan {
  readonly seed: number;
  readonly aircraft: ReadAircraft;
  readonly logged: () => SimulatedFlight;
  readonly next: TrueValues;
  /** Air of the other day as the pilot would state it, and its height. */
  readonly conditions: {
    readonly ambientC: number;
    readonly elevationM: number;
    readonly reservePct: number;
  };
}

/**
 * An aircraft whose propeller is one that the published line of its kind would call usual: drawn about the line with
 * the line's own spread, so that a plan without logs is judged on what it claims.
 */
export function usualPropeller(aircraft: TrueAircraft, seed: number): TrueAircraft {
  const { value, relativeSd } = predictStaticPowerCoefficient(aircraft.propeller);
  const draw = seededRandom(seed).fork("propeller").normal();
  return {
    ...aircraft,
    propeller: { ...aircraft.propeller, staticCp: value * Math.exp(relativeSd * draw) },
  };
}

/** Another propeller of the kind: an inch more or less of diameter, up to an inch of pitch, drawn about the line as well. */
export function otherPropeller(aircraft: TrueAircraft, seed: number): TrueAircraft {
  const random = seededRandom(seed).fork("other propeller");
  const { propeller } = aircraft;
  const diameterIn = propeller.diameterIn + random.pick([-1, 1]);
  const pitchIn = propeller.pitchIn + random.whole(-1, 1);
  return usualPropeller({ ...aircraft, propeller: { ...propeller, diameterIn, pitchIn } }, seed + 7);
}

type Fitting = (aircraft: TrueAircraft, seed: number) => TrueAircraft;

/**
 * Constants off as data sheets are, gains off, every departure of the simulator on. The other flight has the same
 * pack at another temperature, between 17 and 32 degC.
 */
export function randomPlan(seed: number, fitted: Fitting, laterFitted: Fitting = (same) => same): RandomPlan {
  const options = { departures: ALL_DEPARTURES, rateHz: 5 };
  const drawn = randomFlightSpec(seed, options);
  const spec = { ...drawn, aircraft: fitted(drawn.aircraft, seed) };
  const later = randomFlightSpec(seed + 100_000, {
    ...options,
    aircraft: laterFitted(spec.aircraft, seed),
  });
  const pack = { ...later.pack, resistanceFactor: spec.pack.resistanceFactor };
  const next = simulateFlight({ ...later, pack, stated: spec.stated });
  return {
    seed,
    aircraft: aircraftOf(next),
    logged: () => simulateFlight(spec),
    next: trueValues(next),
    conditions: {
      ambientC: next.statedAmbientC,
      elevationM: next.spec.day.elevationM,
      reservePct: 25,
    },
  };
}

function aircraftOf({ facts }: SimulatedFlight): ReadAircraft {
  const read = parseAircraftFile(JSON.stringify(facts), "aircraft.json");
  if (read.state === "read") return read;
  throw new Error(read.notices.map(({ text }) => text).join(" "));
}

function trueValues({ truth, spec, facts }: SimulatedFlight): TrueValues {
  const flight = truth.sorties[0]!;
  const { flightChargeMah, flightTimeS } = flight;
  const isWhole = flightChargeMah !== null && flightTimeS !== null;
  return {
    staticCurrentA: flight.staticCurrentA,
    staticPowerW: flight.staticPowerW,
    staticRpm: flight.staticRpm,
    powerLoadingWPerKg: flight.staticPowerW === null ? null : flight.staticPowerW / facts.flyingMassKg,
    sagPerCellV: flight.sagPerCellV,
    meanCurrentA: isWhole ? (3.6 * flightChargeMah) / flightTimeS : null,
    controllerHotDayPeakC: flight.controllerPeakC + facts.field.hotDayC - spec.day.ambientC,
  };
}
