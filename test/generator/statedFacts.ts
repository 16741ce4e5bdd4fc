import type { TrueAircraft } from "./aircraft.ts";

/** An aircraft file as an object, in the shape that the program reads. */
export interface AircraftFile {
  name: string;
  flyingMassKg: number;
  pack: Record<string, number | string>;
  controller: Record<string, number>;
  motor: Record<string, number>;
  propeller: Record<string, number | string>;
  planned?: Record<string, number>;
  reservePct: number;
  field: { ambientC: number; hotDayC: number; elevationM: number };
  sensors: {
    currentAccuracyPct: number;
    voltageAccuracyPct: number;
    temperatureAccuracyC: number;
    currentScale: number;
    rpmDivisor: number;
  };
}

/** How the file differs from the truth: stated over true, and what it says of the sensors (two sd). */
export interface StatedSpec {
  readonly kvFactor: number;
  readonly windingFactor: number;
  readonly noLoadFactor: number;
  readonly ambientErrorC: number;
  readonly hotDayC: number;
  readonly currentAccuracyPct: number;
  readonly voltageAccuracyPct: number;
  readonly temperatureAccuracyC: number;
}

export const STATED_EXACTLY: StatedSpec = {
  kvFactor: 1,
  windingFactor: 1,
  noLoadFactor: 1,
  ambientErrorC: 0,
  hotDayC: 35,
  currentAccuracyPct: 2,
  voltageAccuracyPct: 0.5,
  temperatureAccuracyC: 2,
};

const toPlace = (value: number, places: number) => Number(value.toFixed(places));

export function statedFacts(
  aircraft: TrueAircraft,
  stated: StatedSpec,
  day: { ambientC: number; elevationM: number },
): AircraftFile {
  const { pack, controller, motor, propeller } = aircraft;
  const packMohm = 1000 * (pack.ohmicOhm + pack.fastOhm);
  return {
    name: aircraft.name,
    flyingMassKg: aircraft.airframe.massKg,
    pack: {
      cells: pack.cells,
      capacityMah: pack.capacityMah,
      maxContinuousA: pack.maxContinuousA,
      fullCellV: 4.2,
      minLoadedCellV: 3.3,
      chemistry: "lipo",
      resistanceMohm: toPlace(packMohm, 1),
      healthPct: 100,
      limitC: 60,
    },
    controller: {
      continuousA: controller.continuousA,
      burstA: controller.burstA,
      burstS: controller.burstS,
      limitC: controller.limitC,
      resistanceMohm: toPlace(1000 * controller.resistanceOhm, 3),
    },
    motor: {
      kv: toPlace(motor.kv * stated.kvFactor, 2),
      windingOhm: toPlace(motor.windingOhm * stated.windingFactor, 5),
      noLoadA: toPlace(motor.noLoadA * stated.noLoadFactor, 3),
      maxPowerW: motor.maxPowerW,
      limitC: motor.limitC,
      polePairs: motor.polePairs,
      count: 1,
    },
    propeller: {
      diameterIn: propeller.diameterIn,
      pitchIn: propeller.pitchIn,
      blades: propeller.blades,
      family: propeller.family,
      maxRpm: propeller.maxRpm,
    },
    reservePct: 25,
    field: {
      ambientC: toPlace(day.ambientC + stated.ambientErrorC, 1),
      hotDayC: stated.hotDayC,
      elevationM: day.elevationM,
    },
    sensors: {
      currentAccuracyPct: stated.currentAccuracyPct,
      voltageAccuracyPct: stated.voltageAccuracyPct,
      temperatureAccuracyC: stated.temperatureAccuracyC,
      currentScale: 1,
      rpmDivisor: 1,
    },
  };
}
