import type { TrendFlight } from "../../../src/season/trends/index.ts";
import {
  LOG_STYLES,
  type LoggedChannel,
  type Random,
  randomAircraft,
  randomFlightSpec,
  seededRandom,
  simulateFlight,
  type TrueAircraft,
  type TrueHeatDriver,
  writeLog,
} from "../../generator/index.ts";
import { aircraftOf, bookFlights } from "./bookFlights.ts";

/** What truly changes over a season of flights, and what is logged of it. */
export interface SeasonScenario {
  readonly driver: TrueHeatDriver;
  readonly isSpeedLogged: boolean;
  readonly isPackTemperatureLogged: boolean;
  readonly isAirStated: boolean;
  /** Factors of flight 0, 1, …: heat made per square ampere, time constant (lost cooling raises both), resistance. */
  readonly heat: (flight: number) => number;
  readonly timeConstant: (flight: number) => number;
  readonly resistance: (flight: number) => number;
  /** Air and pack of each flight, degC. */
  readonly weather: (flight: number, random: Random) => { readonly airC: number; readonly packC: number };
}

export const FLIGHTS = 12;
const steady = () => 1;

/** The pack waits in a box at 25 degC within half a degree; the air changes from day to day. */
const changingAir = (_: number, random: Random) => ({
  airC: random.between(8, 30),
  packC: 25 + random.between(-0.5, 0.5),
});

/** The pack takes the air's temperature, which drifts over the season. */
const drifting =
  (fromC: number, toC: number, wanderC = 1) =>
  (flight: number, random: Random) => {
    const airC = fromC + ((toC - fromC) * flight) / (FLIGHTS - 1) + wanderC * random.normal();
    return { airC, packC: airC };
  };

export const QUIET: SeasonScenario = {
  driver: "motorCurrent",
  isSpeedLogged: true,
  isPackTemperatureLogged: true,
  isAirStated: true,
  heat: steady,
  timeConstant: steady,
  resistance: steady,
  weather: changingAir,
};

const creep = (share: number) => (flight: number) => (1 + share) ** flight;
const jumpAfterSeven = (flight: number) => (flight < 7 ? 1 : 1.15);
const extraHeat = { heat: creep(0.02) };
const lostCooling = { heat: creep(0.02), timeConstant: creep(0.02) };
const ageing = { resistance: creep(0.015) };

/** Heat and pack are told apart by the method, so one season can carry a change of each. */
export const SCENARIOS: Readonly<Record<string, SeasonScenario>> = {
  "nothing changes": QUIET,
  "extra heat, motor current; pack ages": { ...QUIET, ...extraHeat, ...ageing },
  "extra heat, pack current; warming, pack logged": {
    ...QUIET,
    ...extraHeat,
    driver: "packCurrent",
    weather: drifting(8, 26),
  },
  "extra heat, motor current, no speed; cooling": {
    ...QUIET,
    ...extraHeat,
    isSpeedLogged: false,
    isPackTemperatureLogged: false,
    weather: drifting(26, 8),
  },
  "extra heat, pack current, no speed; cooling a little": {
    ...QUIET,
    ...extraHeat,
    driver: "packCurrent",
    isSpeedLogged: false,
    isPackTemperatureLogged: false,
    weather: drifting(17, 14, 0.3),
  },
  "lost cooling, motor current; cooling, pack logged": {
    ...QUIET,
    ...lostCooling,
    weather: drifting(26, 8),
  },
  "lost cooling, pack current; warming a little": {
    ...QUIET,
    ...lostCooling,
    driver: "packCurrent",
    isPackTemperatureLogged: false,
    weather: drifting(14, 17, 0.3),
  },
  "lost cooling, motor current, no speed; warming": {
    ...QUIET,
    ...lostCooling,
    isSpeedLogged: false,
    isPackTemperatureLogged: false,
    weather: drifting(8, 26),
  },
  "extra heat, motor current, no speed, air not stated": {
    ...QUIET,
    ...extraHeat,
    isSpeedLogged: false,
    isAirStated: false,
  },
  "pack ages, steady air, pack not logged": {
    ...QUIET,
    ...ageing,
    isPackTemperatureLogged: false,
    weather: (_, random) => ({ airC: 21 + random.between(-1, 1), packC: 25 + random.between(-0.5, 0.5) }),
  },
  "heat and pack jump by 15 % after flight 7": {
    ...QUIET,
    heat: jumpAfterSeven,
    resistance: jumpAfterSeven,
  },
};

/** One season through written logs: a probe that lags, whole degrees, air stated to 2 degC. */
export function simulatedSeason(scenario: SeasonScenario, seed: number): readonly TrendFlight[] {
  const random = seededRandom(seed).fork("season");
  const aircraft = randomAircraft(random.fork("aircraft"), scenario.driver);
  const first = randomFlightSpec(seed, { aircraft, departures: { slowProbe: true, constantsOff: true } });
  const channels = channelsOf(scenario);
  const weather = random.fork("weather");
  let file: ReturnType<typeof aircraftOf> | null = null;
  return Array.from({ length: FLIGHTS }, (_, flight) => {
    const { airC, packC } = scenario.weather(flight, weather);
    const drawn = randomFlightSpec(1000 * seed + flight, { aircraft });
    const flown = simulateFlight({
      ...drawn,
      aircraft: changed(aircraft, scenario, flight),
      day: { ...first.day, ambientC: airC },
      pack: { startCharge: 1, resistanceFactor: scenario.resistance(flight), temperatureC: packC },
      sensors: { ...first.sensors, rateHz: 4, channels },
      stated: { ...first.stated, ambientErrorC: random.normal() },
    });
    file ??= aircraftOf(JSON.stringify(flown.facts));
    const name = `flight-${String(flight + 1).padStart(2, "0")}`;
    const bytes = writeLog(flown.logged, LOG_STYLES.plainWords);
    const ambientC = scenario.isAirStated ? Math.round(flown.statedAmbientC) : null;
    return bookFlights(bytes, file, [name], { ambientC, pack: "A" });
  }).flat();
}

function changed(aircraft: TrueAircraft, scenario: SeasonScenario, flight: number): TrueAircraft {
  const { controller } = aircraft;
  const risePerA2 = controller.risePerA2 * scenario.heat(flight);
  const timeConstantS = controller.timeConstantS * scenario.timeConstant(flight);
  return { ...aircraft, controller: { ...controller, risePerA2, timeConstantS } };
}

function channelsOf({ isSpeedLogged, isPackTemperatureLogged }: SeasonScenario): readonly LoggedChannel[] {
  return [
    "packVoltage",
    "current",
    "controllerTemperature",
    "throttle",
    "altitude",
    ...(isSpeedLogged ? (["shaftSpeed"] as const) : []),
    ...(isPackTemperatureLogged ? (["packTemperature"] as const) : []),
  ];
}
