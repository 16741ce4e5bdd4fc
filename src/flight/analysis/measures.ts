import { isKnown, type Quantity } from "../../base/quantity/index.ts";

/** Unit of every measure; each is always present in a result, null with a reason where it cannot be given. */
export const MEASURE_UNITS = {
  flightTimeS: "s",
  motorRunTimeS: "s",
  chargeUsedMah: "mAh",
  energyUsedWh: "Wh",
  chargeCoveredMah: "mAh",
  energyCoveredWh: "Wh",
  flightChargeMah: "mAh",
  peakCurrentA: "A",
  meanCurrentA: "A",
  peakPowerW: "W",
  overRatingS: "s",
  staticCurrentA: "A",
  staticPowerW: "W",
  staticRpm: "rev/min",
  peakRpm: "rev/min",
  restPackV: "V",
  minPackV: "V",
  restCellV: "V",
  minCellV: "V",
  sagPerCellV: "V",
  packResistanceMohm: "mohm",
  chargeLeftPct: "%",
  controllerPeakC: "degC",
  controllerMarginC: "degC",
  controllerHotDayPeakC: "degC",
  controllerHotDayMarginC: "degC",
  controllerTimeConstantS: "s",
  controllerRisePerA2: "degC/A2",
  propellerPowerCoefficient: "1",
  motorEfficiencyPct: "%",
  powerLoadingWPerKg: "W/kg",
  /** Peaks of the other probes; limits are judged against them. */
  motorPeakC: "degC",
  packPeakC: "degC",
  /** Longest single stretch above the controller's continuous rating. */
  longestOverRatingS: "s",
  /** Ten seconds after a step: what loaded-voltage predictions use. */
  packResistance10sMohm: "mohm",
  /** The pack before the first run: resistances of different flights compare only at one temperature. */
  packStartC: "degC",
} as const;

export type MeasureName = keyof typeof MEASURE_UNITS;
export const MEASURE_NAMES = Object.keys(MEASURE_UNITS) as readonly MeasureName[];

/** What drives the controller's heating in the fitted model. */
export type HeatDriver = "packCurrent" | "motorCurrent" | "powerFourThirds";

export type Measures = { readonly [name in MeasureName]: Quantity } & {
  readonly controllerRisePerA2: Quantity & { readonly driver?: HeatDriver };
};

/** True of measures whose current nobody logged: a peak of logged current is measured, with a charge of its rows. */
export function isCurrentEstimated(measures: Pick<Measures, "peakCurrentA" | "chargeCoveredMah">): boolean {
  const { peakCurrentA, chargeCoveredMah } = measures;
  return isKnown(peakCurrentA) && peakCurrentA.basis === "estimated" && !isKnown(chargeCoveredMah);
}
