import type { TrueAircraft } from "./aircraft.ts";
import { type Random, seededRandom } from "./random.ts";
import { randomAircraft } from "./randomAircraft.ts";
import { type ScriptOptions, USUAL_SCRIPT } from "./script.ts";
import { type LoggedChannel, type SensorSpec, USUAL_CHANNELS, USUAL_SENSORS } from "./sensors.ts";
import type { FlightSpec } from "./simulate.ts";
import { STATED_EXACTLY, type StatedSpec } from "./statedFacts.ts";

/** Ways in which a flight departs from the plain model, each of its own. */
export interface Departures {
  /** The current sensor is a low pass of 0.3 s. */
  readonly slowCurrentSensor: boolean;
  /** The pack has a fast part of 1 to 2 s; without it that resistance is ohmic. */
  readonly fastPackPart: boolean;
  /** The temperature probe lags by 4 s. */
  readonly slowProbe: boolean;
  /** Motor current, not pack current, heats the controller. */
  readonly heatByMotorCurrent: boolean;
  /** The aircraft file is off: kv 2.5 %, winding 15 %, no-load current 30 % (1 sd). */
  readonly constantsOff: boolean;
  /** Logged over true speed; 1: right. */
  readonly speedFactor: number;
  /** Stated over true kv, 1: right (comes on top of `constantsOff`). */
  readonly kvFactor: number;
}

export const NO_DEPARTURES: Departures = {
  slowCurrentSensor: false,
  fastPackPart: false,
  slowProbe: false,
  heatByMotorCurrent: false,
  constantsOff: false,
  speedFactor: 1,
  kvFactor: 1,
};

export const ALL_DEPARTURES: Departures = {
  ...NO_DEPARTURES,
  slowCurrentSensor: true,
  fastPackPart: true,
  slowProbe: true,
  heatByMotorCurrent: true,
  constantsOff: true,
};

/** What the caller fixes of a random flight; the rest is drawn. */
export interface RandomFlightOptions {
  readonly departures?: Partial<Departures>;
  /** Default: random. */
  readonly aircraft?: TrueAircraft;
  readonly rateHz?: number;
  /** Default: volts, amps, speed, controller temperature, throttle, altitude, airspeed. */
  readonly channels?: readonly LoggedChannel[];
  readonly script?: Partial<ScriptOptions>;
  readonly sensors?: Partial<SensorSpec>;
  readonly stated?: Partial<StatedSpec>;
  /** False: gains 1, no temperature offset, no delays, ambient stated exactly. Default true. */
  readonly perturbed?: boolean;
}

function withoutFastPart(aircraft: TrueAircraft): TrueAircraft {
  const { pack } = aircraft;
  return { ...aircraft, pack: { ...pack, ohmicOhm: pack.ohmicOhm + pack.fastOhm, fastOhm: 0 } };
}

function randomSensors(options: RandomFlightOptions, departures: Departures, random: Random): SensorSpec {
  const stated = { ...STATED_EXACTLY, ...options.stated };
  const oneSd = (twoSdPct: number) => twoSdPct / 200;
  const isOn = options.perturbed === false ? 0 : 1;
  const drawn: SensorSpec = {
    ...USUAL_SENSORS,
    rateHz: options.rateHz ?? random.pick([2, 4, 5, 8, 10, 20]),
    channels: options.channels ?? USUAL_CHANNELS,
    voltStep: random.pick([0.01, 0.02, 0.05, 0.1]),
    voltGain: 1 + isOn * oneSd(stated.voltageAccuracyPct) * random.normal(),
    ampGain: 1 + isOn * oneSd(stated.currentAccuracyPct) * random.normal(),
    temperatureOffsetC: isOn * 0.5 * stated.temperatureAccuracyC * random.normal(),
    voltDelayS: isOn * random.between(0, 0.15),
    ampDelayS: isOn * random.between(0, 0.15),
    rpmDelayS: isOn * random.between(0, 0.15),
    ampFilterS: departures.slowCurrentSensor ? 0.3 : 0,
    probeLagS: departures.slowProbe ? 4 : 0,
    speedFactor: departures.speedFactor,
  };
  return { ...drawn, ...options.sensors };
}

function randomStated(options: RandomFlightOptions, departures: Departures, random: Random): StatedSpec {
  const off = departures.constantsOff ? 1 : 0;
  const drawn: StatedSpec = {
    ...STATED_EXACTLY,
    kvFactor: departures.kvFactor * (1 + off * 0.025 * random.normal()),
    windingFactor: Math.max(0.3, 1 + off * 0.15 * random.normal()),
    noLoadFactor: Math.max(0.1, 1 + off * 0.3 * random.normal()),
    // Known to 2 degC: two standard deviations.
    ambientErrorC: options.perturbed === false ? 0 : random.normal(),
  };
  return { ...drawn, ...options.stated };
}

function randomScript(random: Random): ScriptOptions {
  return {
    ...USUAL_SCRIPT,
    flightS: random.between(240, 420),
    restBeforeS: random.between(11, 25),
    restAfterS: random.between(12, 40),
    runUpHoldS: random.between(4, 6.5),
    touchAndGo: random.chance(0.3),
    lowPass: random.chance(0.6),
    taxiOutS: random.between(12, 36),
    taxiBackS: random.between(15, 35),
    approachS: random.between(13, 21),
    closesThrottleToLand: random.chance(0.7),
    vigour: random.between(0.7, 1.2),
  };
}

/** A random flight of a random aircraft: one seed, one flight. */
export function randomFlightSpec(seed: number, options: RandomFlightOptions = {}): FlightSpec {
  const random = seededRandom(seed);
  const departures = { ...NO_DEPARTURES, ...options.departures };
  const driver = departures.heatByMotorCurrent ? "motorCurrent" : "packCurrent";
  const drawn = options.aircraft ?? randomAircraft(random.fork("aircraft"), driver);
  const aircraft = departures.fastPackPart || options.aircraft ? drawn : withoutFastPart(drawn);
  const weather = random.fork("weather");
  return {
    seed,
    aircraft,
    day: { ambientC: weather.between(6, 31), elevationM: 10 * weather.whole(0, 80) },
    pack: {
      startCharge: weather.between(0.97, 1),
      resistanceFactor: weather.between(0.95, 1.3),
      temperatureC: weather.between(17, 32),
    },
    sorties: [{ ...randomScript(random.fork("script")), ...options.script }],
    sensors: randomSensors(options, departures, random.fork("sensors")),
    stated: randomStated(options, departures, random.fork("stated")),
  };
}
