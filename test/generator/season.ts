import type { TrueAircraft } from "./aircraft.ts";
import { type Random, seededRandom } from "./random.ts";
import { type ScriptOptions, USUAL_SCRIPT } from "./script.ts";
import {
  PACK_AGE,
  PACK_BOX_C,
  SEASON_AIRCRAFT,
  SEASON_AMP_GAIN,
  SEASON_LOGS,
  SEASON_SEED,
  type SeasonLog,
} from "./seasonPlan.ts";
import { type LoggedChannel, USUAL_SENSORS } from "./sensors.ts";
import { type FlightSpec, type SimulatedFlight, simulateFlight } from "./simulate.ts";
import { STATED_EXACTLY } from "./statedFacts.ts";

/** One log of the demo season with what the pilot wrote down beside it. */
export interface SeasonFlight {
  readonly log: SeasonLog;
  readonly simulated: SimulatedFlight;
  /** Air temperature as the pilot read it, whole degrees. */
  readonly notedAmbientC: number;
  /** What the charger put back, mAh, or null when not noted. */
  readonly putBackMah: number | null;
}

const BASE_CHANNELS: readonly LoggedChannel[] = [
  "packVoltage",
  "current",
  "shaftSpeed",
  "controllerTemperature",
  "packTemperature",
  "throttle",
];

function flightScript(random: Random, log: SeasonLog): ScriptOptions {
  return {
    ...USUAL_SCRIPT,
    flightS: random.between(359, 384),
    restBeforeS: random.between(13, 18),
    restAfterS: random.between(20, 32),
    runUpHoldS: random.between(4.5, 5.5),
    taxiOutS: random.between(16, 26),
    taxiBackS: random.between(18, 30),
    approachS: random.between(15, 19),
    vigour: random.between(0.85, 1.1),
    touchAndGo: log.touchAndGo ?? false,
  };
}

/** Two short flights with five minutes on the shore between them. */
function twoScripts(random: Random, log: SeasonLog): readonly ScriptOptions[] {
  const short = (restBeforeS: number, restAfterS: number): ScriptOptions => ({
    ...flightScript(random, log),
    flightS: random.between(165, 185),
    restBeforeS,
    restAfterS,
    lowPass: false,
  });
  return [short(15, 160), short(140, 25)];
}

function sortiesOf(log: SeasonLog, random: Random): FlightSpec["sorties"] {
  if (log.flights.length === 0) return ["bench"];
  return log.flights.length === 2 ? twoScripts(random, log) : [flightScript(random, log)];
}

function flownAircraft(log: SeasonLog): TrueAircraft {
  const aircraft = SEASON_AIRCRAFT[log.propeller];
  const cruiseDuty = aircraft.airframe.cruiseDuty * (log.workload ?? 1);
  return { ...aircraft, airframe: { ...aircraft.airframe, cruiseDuty } };
}

function specOf(log: SeasonLog, seed: number): FlightSpec {
  const random = seededRandom(seed).fork("season");
  const age = PACK_AGE[log.pack];
  return {
    seed,
    aircraft: flownAircraft(log),
    day: { ambientC: log.ambientC, elevationM: 120 },
    pack: {
      startCharge: 1,
      resistanceFactor: age.atStart * (1 + age.perCycle * log.packCycle),
      temperatureC: PACK_BOX_C + random.between(-0.5, 0.5),
    },
    sorties: sortiesOf(log, random),
    sensors: {
      ...USUAL_SENSORS,
      rateHz: log.rateHz,
      channels: [...BASE_CHANNELS, ...log.more],
      ampGain: SEASON_AMP_GAIN,
      voltGain: 1.001,
      ampDelayS: 0.06,
      probeLagS: 3,
      dropOuts: log.dropOuts ?? [],
      endS: log.endS ?? Number.POSITIVE_INFINITY,
    },
    stated: STATED_EXACTLY,
  };
}

/** The charger returns the true charge within half a percent (1 sd), shown in steps of 1 mAh. */
function putBack(simulated: SimulatedFlight, random: Random): number {
  const usedMah = simulated.truth.sorties.reduce((sum, sortie) => sum + sortie.chargeUsedMah, 0);
  return Math.round(usedMah * (1 + 0.005 * random.normal()));
}

/** The whole season, always the same. */
export function simulateSeason(): readonly SeasonFlight[] {
  return SEASON_LOGS.map((log, index) => {
    const seed = SEASON_SEED + index;
    const notes = seededRandom(seed).fork("notes");
    const simulated = simulateFlight(specOf(log, seed));
    return {
      log,
      simulated,
      notedAmbientC: Math.round(log.ambientC + 0.4 * notes.normal()),
      putBackMah: log.hasPutBack ? putBack(simulated, notes) : null,
    };
  });
}
