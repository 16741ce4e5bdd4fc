import { capital } from "../../base/words/index.ts";
import { MEASURE_WORDS, type MeasureName } from "../../flight/analysis/index.ts";

/** What a measure means and the published source of the way it is computed. */
export interface MeasureMethod {
  readonly meaning: string;
  /** Author, title, year; null where the definition is our own. */
  readonly source: string | null;
}

const GUM = "JCGM 100:2008, Guide to the expression of uncertainty in measurement";
const MOTOR = "M. Drela, First-Order DC Electric Motor Model, MIT, 2007";
const AIR = "ISO 2533:1975, Standard Atmosphere";
const CELLS = "IEC 61960-3:2017, Secondary lithium cells and batteries";

function method(meaning: string, source: string | null = null): MeasureMethod {
  return { meaning, source };
}

/** The measure's name with a large first letter. */
export function measureTitle(name: MeasureName): string {
  return capital(MEASURE_WORDS[name]);
}

export const MEASURE_METHODS: Readonly<Record<MeasureName, MeasureMethod>> = {
  flightTimeS: method("From the take-off run to touchdown; taxi and run-up are left out."),
  motorRunTimeS: method("Time the motor turned between its first start and its last stop."),
  chargeUsedMah: method(
    "Covered charge, plus an estimate for short holes, corrected for a negative rest current.",
    GUM,
  ),
  energyUsedWh: method("Volts times amps over time, with the same corrections as the charge.", GUM),
  chargeCoveredMah: method(
    "Trapezoid sum of the current over neighbouring rows; nothing is added for holes.",
  ),
  energyCoveredWh: method(
    "Trapezoid sum of volts times amps over neighbouring rows; nothing is added for holes.",
  ),
  flightChargeMah: method("Charge from take-off to touchdown."),
  peakCurrentA: method("The largest single current sample after repairs."),
  meanCurrentA: method("Charge in flight over flight time; on a bench run over the time the motor ran."),
  peakPowerW: method("The largest product of volts and amps in one row."),
  overRatingS: method("Time the current was above the controller's continuous rating."),
  staticCurrentA: method("Median current over the last 1.5 s of full throttle on the ground."),
  staticPowerW: method("Median power over the last 1.5 s of full throttle on the ground."),
  staticRpm: method("Median shaft speed over the last 1.5 s of full throttle on the ground."),
  peakRpm: method("The largest single shaft speed sample after repairs."),
  restPackV: method("Median pack volts of the last 5 s before the motor first ran."),
  minPackV: method("The lowest pack volts while the motor ran."),
  restCellV: method("Median volts per cell of the last 5 s before the motor first ran."),
  minCellV: method("The lowest volts per cell while the motor ran."),
  sagPerCellV: method("Largest drop per cell below the line between the two rest voltages."),
  packResistanceMohm: method("Volts lost per ampere one second after a step of the load.", CELLS),
  chargeLeftPct: method("Share of the pack's capacity that was not used."),
  controllerPeakC: method("The highest controller temperature as logged."),
  controllerMarginC: method("The controller's limit minus its peak."),
  controllerHotDayPeakC: method("The same flight with the air as warm as the hot day of the aircraft file."),
  controllerHotDayMarginC: method("The controller's limit minus the hot-day peak."),
  controllerTimeConstantS: method(
    "Time in which the controller covers 63 % of the way to its steady temperature.",
  ),
  controllerRisePerA2: method("Steady warming per square ampere of its driver."),
  propellerPowerCoefficient: method(
    "Shaft power over air density, speed cubed and diameter to the fifth, on the static run.",
    `${MOTOR}; ${AIR}`,
  ),
  motorEfficiencyPct: method("Shaft power over electrical power on the static run.", MOTOR),
  powerLoadingWPerKg: method("Static power over flying mass."),
  motorPeakC: method("The highest motor temperature as logged."),
  packPeakC: method("The highest pack temperature as logged."),
  longestOverRatingS: method("The longest unbroken time above the controller's continuous rating."),
  packResistance10sMohm: method("Volts lost per ampere ten seconds after a step of the load.", CELLS),
  packStartC: method("Median pack temperature of the first five seconds of this flight's rows."),
};

const SOURCE_WORDS: Readonly<Record<string, string>> = {
  "controller.burstA": "controller, burst rating",
  "controller.burstS": "controller, burst time",
  "controller.continuousA": "controller, continuous rating",
  "controller.limitC": "controller, temperature limit",
  "pack.maxContinuousA": "pack, continuous rating",
  "pack.minLoadedCellV": "pack, lowest volts under load",
  "pack.limitC": "pack, temperature limit",
  "motor.maxPowerW": "motor, power limit",
  "motor.limitC": "motor, temperature limit",
  "propeller.maxRpm": "propeller, speed limit",
};

/** Which fact of the aircraft file a limit is, in words. */
export function limitSourceWords(source: string): string {
  return SOURCE_WORDS[source] ?? source;
}
