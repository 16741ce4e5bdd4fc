import type { TrueAircraft, TrueController, TrueMotor, TruePack, TruePropeller } from "./aircraft.ts";
import type { Random } from "./random.ts";

/** What the rest of an aircraft is sized from. */
interface Size {
  readonly massKg: number;
  readonly cells: number;
  /** Full throttle on the ground with a fresh pack, about. */
  readonly fullA: number;
  readonly loadedV: number;
}

/** Bigger aircraft take more cells; 200 to 300 W/kg at full throttle. */
function randomSize(random: Random): Size {
  const cells = random.whole(4, 12);
  const fullA = random.between(38, 62) * (0.8 + cells / 24);
  const loadedV = 3.85 * cells;
  return { cells, fullA, loadedV, massKg: (fullA * loadedV) / random.between(200, 300) };
}

function randomPack(size: Size, random: Random): TruePack {
  const wholeOhm = (random.between(0.045, 0.075) * size.loadedV) / size.fullA;
  const fastShare = random.between(0.12, 0.2);
  const slowShare = random.between(0.2, 0.3);
  const capacityMah = 100 * Math.round(size.fullA * random.between(0.8, 1.05));
  return {
    cells: size.cells,
    capacityMah,
    ohmicOhm: wholeOhm * (1 - fastShare - slowShare),
    fastOhm: wholeOhm * fastShare,
    fastS: random.between(1, 2),
    slowOhm: wholeOhm * slowShare,
    slowS: 15,
    maxContinuousA: Math.round((capacityMah / 1000) * 30),
    heatJPerK: 28 * size.cells * (capacityMah / 1000),
  };
}

function randomPropeller(size: Size, random: Random): TruePropeller {
  const powerW = size.fullA * size.loadedV;
  const diameterIn = Math.round(2 * 18 * (powerW / 1700) ** 0.3 * random.between(0.92, 1.08)) / 2;
  const pitchIn = Math.round(2 * diameterIn * random.between(0.45, 0.68)) / 2;
  return {
    diameterIn,
    pitchIn,
    blades: 2,
    family: random.pick(["thin electric", "sport"]),
    staticCp: (0.006 + 0.07 * (pitchIn / diameterIn)) * random.between(0.92, 1.08),
    maxRpm: Math.round(150_000 / diameterIn),
  };
}

/** Speed constant for which the propeller takes the full current at sea level; a few percent off is fine. */
function randomMotor(size: Size, propeller: TruePropeller, controllerOhm: number, random: Random): TrueMotor {
  const pathOhm = (random.between(0.035, 0.06) * size.loadedV) / size.fullA;
  const noLoadA = size.fullA * random.between(0.02, 0.03);
  const backV = size.loadedV - size.fullA * pathOhm;
  const shaftW = backV * (size.fullA - 1.6 * noLoadA);
  const diameterM = propeller.diameterIn * 0.0254;
  const revPerS = (shaftW / (1.2 * propeller.staticCp * diameterM ** 5)) ** (1 / 3);
  return {
    kv: (60 * revPerS) / backV,
    windingOhm: pathOhm - controllerOhm,
    noLoadA,
    noLoadGrowth: random.between(0.35, 0.65),
    polePairs: random.pick([6, 7, 10, 12]),
    maxPowerW: Math.round((size.fullA * size.loadedV * random.between(1.2, 1.5)) / 50) * 50,
    limitC: 100,
  };
}

function randomController(size: Size, random: Random): Omit<TrueController, "driver"> {
  const continuousA = 10 * Math.round((size.fullA * random.between(1.35, 1.8)) / 10);
  return {
    continuousA,
    burstA: continuousA + 20,
    burstS: 10,
    limitC: 100,
    resistanceOhm: random.between(0.0008, 0.002),
    timeConstantS: random.between(55, 130),
    // A flight runs near half the full current through the motor.
    risePerA2: random.between(36, 65) / (0.5 * size.fullA) ** 2 / 1.6,
    standbyA: random.between(0.1, 0.3),
  };
}

/** An invented aircraft of 4 to 12 cells with parts that suit each other. */
export function randomAircraft(random: Random, driver: TrueController["driver"]): TrueAircraft {
  const size = randomSize(random);
  const propeller = randomPropeller(size, random);
  const controller = { ...randomController(size, random), driver };
  const heavy = Math.sqrt(size.massKg / 5);
  return {
    name: `Invented ${size.cells}-cell`,
    pack: randomPack(size, random),
    controller,
    motor: randomMotor(size, propeller, controller.resistanceOhm, random),
    propeller,
    airframe: {
      massKg: Math.round(10 * size.massKg) / 10,
      liftOffMS: 9 * heavy ** 0.5,
      cruiseMS: 17 * heavy ** 0.5,
      cruiseDuty: random.between(0.77, 0.85),
      taxiDuty: random.between(0.3, 0.36),
    },
  };
}
