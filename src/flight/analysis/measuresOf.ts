import { isKnown, known, type Quantity, unknown } from "../../base/quantity/index.ts";
import { channelOrWhy } from "./channelOrWhy.ts";
import { coveredCharge, usedCharge } from "./charge.ts";
import { chargeLeft } from "./chargeLeft.ts";
import { controllerTemperature } from "./controllerTemperature.ts";
import { openedByCut } from "./cutLog.ts";
import { coveredEnergy, usedEnergy } from "./energy.ts";
import { estimatedMeasures } from "./estimatedMeasures.ts";
import { firstReading } from "./firstReading.ts";
import { flightCharge, meanCurrent } from "./flightCharge.ts";
import { type FlightContext, runningRows } from "./flightContext.ts";
import { flightTime, motorRunTime } from "./flightTime.ts";
import type { Identified } from "./identifiedMeasures.ts";
import type { Measures } from "./measures.ts";
import { overRating } from "./overRating.ts";
import {
  lowestCellVoltage,
  lowestPackVoltage,
  peakCurrent,
  peakPower,
  peakRpm,
  peakTemperature,
} from "./peaks.ts";
import { restMeasures } from "./restMeasures.ts";
import { sagPerCell } from "./sag.ts";
import { NO_CELL_COUNT, NO_FIRST_READING } from "./sentences.ts";
import { staticMeasures } from "./staticMeasures.ts";

/** Every measure of one flight, each present: a value with its interval, or null with the reason. */
export function measuresOf(context: FlightContext, identified: Identified): Measures {
  const { recording, rows, cells } = context;
  const facts = { ...context.facts, pack: { ...context.facts.pack, cells } };
  const running = runningRows(context);
  const flightTimeS = flightTime(context);
  const flightChargeMah = flightCharge(context);
  const chargeUsedMah = usedCharge(recording, rows, facts, context);
  const standing = staticMeasures(context);
  const minCellV = lowestCellVoltage(recording, running, facts);
  const measures: Measures = {
    flightTimeS,
    motorRunTimeS: motorRunTime(context),
    chargeUsedMah,
    energyUsedWh: usedEnergy(recording, rows, facts, context),
    chargeCoveredMah: coveredCharge(recording, rows, facts),
    energyCoveredWh: coveredEnergy(recording, rows, facts),
    flightChargeMah,
    peakCurrentA: peakCurrent(recording, rows, facts, running),
    meanCurrentA: meanCurrent(context),
    peakPowerW: peakPower(recording, rows, facts, running),
    peakRpm: doubted(peakRpm(recording, rows), identified.speedDoubt),
    minPackV: lowestPackVoltage(recording, running, facts),
    minCellV: minCellV.value === null && cells === null ? unknown("V", NO_CELL_COUNT) : minCellV,
    sagPerCellV: sagPerCell(context),
    chargeLeftPct: chargeLeft(context, chargeUsedMah),
    motorPeakC: peakTemperature(recording, "motorTemperature", rows, facts, running),
    packPeakC: peakTemperature(recording, "packTemperature", rows, facts, running),
    packStartC: startTemperature(context),
    ...overRating(context),
    ...standing,
    staticRpm: doubted(standing.staticRpm, identified.speedDoubt),
    ...restMeasures(context),
    ...controllerTemperature(context, identified.peakLag),
    ...identified.measures,
    ...estimatedMeasures(context),
  };
  return { ...measures, ...openedByCut(measures, context) };
}

function doubted(quantity: Quantity, doubt: string | null): Quantity {
  return isKnown(quantity) && doubt !== null ? { ...quantity, doubt } : quantity;
}

/** The probe's accuracy is its interval. */
function startTemperature(context: FlightContext): Quantity {
  const temperature = channelOrWhy(context.recording, "packTemperature");
  if (temperature.why !== null) return unknown("degC", temperature.why);
  const first = firstReading(context, temperature.values);
  if (first === null) return unknown("degC", NO_FIRST_READING);
  return known(first, context.facts.sensors.temperatureAccuracyC, "degC", "measured");
}
