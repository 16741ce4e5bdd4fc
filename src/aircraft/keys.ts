import { MOST_CELLS } from "../base/channels/index.ts";
import { FULL_CELL_V } from "./defaults.ts";

/** A key that holds one number: what it is, its unit, the range it may have (both ends allowed), an example. */
export interface NumberKey {
  readonly what: string;
  readonly unit: string;
  readonly low: number;
  readonly high: number;
  readonly example: number;
  readonly isWhole?: boolean;
}

const number = (what: string, unit: string, low: number, high: number, example: number): NumberKey => ({
  what,
  unit,
  low,
  high,
  example,
});
const whole = (what: string, unit: string, low: number, high: number, example: number): NumberKey => ({
  ...number(what, unit, low, high, example),
  isWhole: true,
});

/**
 * Every number of the aircraft file. The ranges keep out slips of the unit (milliohm for ohm, grams for
 * kilograms); within them the pilot is believed.
 */
export const NUMBER_KEYS = {
  flyingMassKg: number("Mass ready to fly, packs included", "kg", 0.05, 200, 7.1),
  "pack.cells": whole("Cells in series", "cells", 1, MOST_CELLS, 8),
  "pack.capacityMah": number("Rated capacity, all parallel packs together", "mAh", 50, 200_000, 5000),
  "pack.maxContinuousA": number("Most current the pack may give without pause", "A", 0.5, 2000, 150),
  "pack.fullCellV": number("Volts of one full cell at rest", "V", 3.3, 4.5, 4.2),
  "pack.minLoadedCellV": number("Lowest volts of one cell that you allow under load", "V", 1.5, 4.1, 3.3),
  "pack.resistanceMohm": number("Resistance of the whole pack with its leads", "mohm", 0, 5000, 40),
  "pack.healthPct": number("Share of the rated capacity that the pack still holds", "%", 5, 120, 100),
  "pack.limitC": number("Highest pack temperature that you allow", "degC", 20, 120, 60),
  "controller.continuousA": number("Continuous rating of the controller", "A", 0.5, 2000, 100),
  "controller.burstA": number("Most current for a short burst", "A", 0.5, 3000, 120),
  "controller.burstS": number("How long a burst may last", "s", 0.1, 600, 10),
  "controller.limitC": number("Highest controller temperature that you allow", "degC", 30, 200, 100),
  "controller.resistanceMohm": number("Resistance of the controller's switches", "mohm", 0, 200, 1.5),
  "motor.kv": number("Speed constant", "rev/min per volt", 5, 20_000, 230),
  "motor.windingOhm": number(
    "Resistance of the winding between two leads, or of the whole path when controller.resistanceMohm is absent",
    "ohm",
    0,
    5,
    0.021,
  ),
  "motor.noLoadA": number("Current without propeller, at about 10 V", "A", 0, 50, 1.4),
  "motor.maxPowerW": number("Most electrical power that the motor may take", "W", 1, 100_000, 2400),
  "motor.limitC": number("Highest motor temperature that you allow", "degC", 30, 250, 100),
  "motor.polePairs": whole("Magnet pole pairs: half the number of magnets", "pairs", 1, 60, 7),
  "motor.count": whole("Motors that share the measured current", "motors", 1, 16, 1),
  "propeller.diameterIn": number("Propeller diameter", "inch", 1, 100, 18),
  "propeller.pitchIn": number("Propeller pitch", "inch", 0.5, 100, 10),
  "propeller.blades": whole("Blades of the propeller", "blades", 1, 10, 2),
  "propeller.maxRpm": number(
    "Highest shaft speed that the propeller's maker allows",
    "rev/min",
    100,
    60_000,
    8300,
  ),
  "planned.staticCurrentA": number("Planned current at full throttle on the ground", "A", 0.1, 3000, 55),
  "planned.staticPowerW": number("Planned power at full throttle on the ground", "W", 1, 200_000, 1700),
  "planned.staticRpm": number(
    "Planned shaft speed at full throttle on the ground",
    "rev/min",
    10,
    60_000,
    6900,
  ),
  "planned.meanCurrentA": number("Planned mean current of a flight", "A", 0.1, 3000, 24),
  "planned.flightTimeS": number("Planned flight time, take-off to touchdown", "s", 1, 86_400, 360),
  "planned.chargeUsedMah": number("Planned charge for one flight", "mAh", 1, 200_000, 2600),
  "planned.minCellV": number("Planned lowest volts of one cell under load", "V", 1.5, 4.5, 3.5),
  "planned.controllerPeakC": number("Planned peak temperature of the controller", "degC", -20, 200, 75),
  reservePct: number("Share of the charge to land with", "%", 0, 90, 25),
  "field.ambientC": number("Usual air temperature of the field, not the day's", "degC", -40, 60, 15),
  "field.hotDayC": number("Air temperature of the hottest day you fly on", "degC", -40, 70, 35),
  "field.elevationM": number("Height of the field above sea level", "m", -500, 6000, 120),
  "sensors.currentAccuracyPct": number(
    "Accuracy of the current sensor, two standard deviations",
    "%",
    0,
    50,
    2,
  ),
  "sensors.voltageAccuracyPct": number(
    "Accuracy of the voltage input, two standard deviations",
    "%",
    0,
    50,
    0.5,
  ),
  "sensors.temperatureAccuracyC": number(
    "Accuracy of the temperature probes, two standard deviations",
    "degC",
    0,
    30,
    2,
  ),
  "sensors.currentScale": number("Logged amperes times this are amperes", "1", 0.01, 100, 1),
  "sensors.rpmDivisor": number("Logged revolutions over this are shaft revolutions", "1", 0.01, 100, 1),
  "readings.rateHz": number("Rows per second, for a log without a usable clock", "Hz", 0.001, 10_000, 5),
} as const satisfies Record<string, NumberKey>;

export type NumberKeyPath = keyof typeof NUMBER_KEYS;

const VOLTS = Object.entries(FULL_CELL_V).map(([chemistry, volts]) => `${chemistry} ${volts} V`);

/** Every key of the aircraft file that holds words. */
export const TEXT_KEYS = {
  name: { what: "Name of the aircraft as reports show it.", example: "Tern" },
  "pack.chemistry": {
    what: `Cell chemistry; it sets the volts of a full cell when pack.fullCellV is absent: ${VOLTS.join(", ")}.`,
    example: "lipo",
  },
  "propeller.family": { what: "Kind of propeller in your own words.", example: "thin electric" },
} as const;

export type TextKeyPath = keyof typeof TEXT_KEYS;

/** "a whole number from 1 to 16 cells", "a number from 0.05 to 200 kg". */
export function rangeText(key: NumberKey): string {
  const unit = key.unit === "1" ? "" : ` ${key.unit}`;
  return `${key.isWhole ? "a whole number" : "a number"} from ${key.low} to ${key.high}${unit}`;
}
