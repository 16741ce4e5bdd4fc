import { DEFAULTS, FULL_CELL_V } from "./defaults.ts";

/** What is fitted. A fact the pilot did not give is null; only the sensor accuracies have defaults. */
export interface PackFacts {
  /** Cells in series; null without an aircraft file. */
  readonly cells: number | null;
  readonly capacityMah: number | null;
  readonly maxContinuousA: number | null;
  readonly fullCellV: number;
  readonly minLoadedCellV: number | null;
  readonly chemistry: "lipo" | "lihv" | "liion" | "life";
  readonly resistanceMohm: number | null;
  readonly healthPct: number;
  readonly limitC: number | null;
}

export interface ControllerFacts {
  readonly continuousA: number | null;
  readonly burstA: number | null;
  readonly burstS: number | null;
  readonly limitC: number | null;
  readonly resistanceMohm: number | null;
}

export interface MotorFacts {
  /** Speed constant in rev/min per volt. */
  readonly kv: number | null;
  readonly windingOhm: number | null;
  readonly noLoadA: number | null;
  readonly maxPowerW: number | null;
  readonly limitC: number | null;
  readonly polePairs: number | null;
  readonly count: number;
}

export interface PropellerFacts {
  readonly diameterIn: number | null;
  readonly pitchIn: number | null;
  readonly blades: number;
  readonly family: string | null;
  readonly maxRpm: number | null;
}

export interface FieldFacts {
  /** The usual air temperature of the place; not the day's. */
  readonly ambientC: number | null;
  readonly hotDayC: number;
  readonly elevationM: number;
}

/** Accuracies are two standard deviations of one constant gain (or, for temperature, offset). */
export interface SensorFacts {
  readonly currentAccuracyPct: number;
  readonly voltageAccuracyPct: number;
  readonly temperatureAccuracyC: number;
  readonly currentScale: number;
  readonly rpmDivisor: number;
}

export interface Facts {
  /** Null when no aircraft file was given. */
  readonly name: string | null;
  readonly flyingMassKg: number | null;
  readonly pack: PackFacts;
  readonly controller: ControllerFacts;
  readonly motor: MotorFacts;
  readonly propeller: PropellerFacts;
  readonly field: FieldFacts;
  readonly sensors: SensorFacts;
}

/** What is assumed of an aircraft nobody described. */
export const NO_FACTS: Facts = {
  name: null,
  flyingMassKg: null,
  pack: {
    cells: null,
    capacityMah: null,
    maxContinuousA: null,
    fullCellV: FULL_CELL_V[DEFAULTS["pack.chemistry"].value],
    minLoadedCellV: null,
    chemistry: DEFAULTS["pack.chemistry"].value,
    resistanceMohm: null,
    healthPct: DEFAULTS["pack.healthPct"].value,
    limitC: null,
  },
  controller: { continuousA: null, burstA: null, burstS: null, limitC: null, resistanceMohm: null },
  motor: {
    kv: null,
    windingOhm: null,
    noLoadA: null,
    maxPowerW: null,
    limitC: null,
    polePairs: null,
    count: DEFAULTS["motor.count"].value,
  },
  propeller: {
    diameterIn: null,
    pitchIn: null,
    blades: DEFAULTS["propeller.blades"].value,
    family: null,
    maxRpm: null,
  },
  field: {
    ambientC: null,
    hotDayC: DEFAULTS["field.hotDayC"].value,
    elevationM: DEFAULTS["field.elevationM"].value,
  },
  sensors: {
    currentAccuracyPct: DEFAULTS["sensors.currentAccuracyPct"].value,
    voltageAccuracyPct: DEFAULTS["sensors.voltageAccuracyPct"].value,
    temperatureAccuracyC: DEFAULTS["sensors.temperatureAccuracyC"].value,
    currentScale: DEFAULTS["sensors.currentScale"].value,
    rpmDivisor: DEFAULTS["sensors.rpmDivisor"].value,
  },
};
