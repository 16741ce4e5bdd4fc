import { unknown } from "../../base/quantity/index.ts";
import { coveredCharge, usedCharge } from "./charge.ts";
import { chargeLeft } from "./chargeLeft.ts";
import { controllerTemperature } from "./controllerTemperature.ts";
import { coveredEnergy, usedEnergy } from "./energy.ts";
import { flightCharge, meanCurrent } from "./flightCharge.ts";
import { type FlightContext, runningRows } from "./flightContext.ts";
import { flightTime, motorRunTime } from "./flightTime.ts";
import { identifiedMeasures } from "./identifiedMeasures.ts";
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
import { NO_CELL_COUNT } from "./sentences.ts";
import { staticMeasures } from "./staticMeasures.ts";

/** Every measure of one flight, each present: a value with its interval, or null with the reason. */
export function measuresOf(context: FlightContext): Measures {
  const { recording, rows, cells } = context;
  const facts = { ...context.facts, pack: { ...context.facts.pack, cells } };
  const running = runningRows(context);
  const flightTimeS = flightTime(context);
  const flightChargeMah = flightCharge(context);
  const chargeUsedMah = usedCharge(recording, rows, facts, context);
  const identified = identifiedMeasures(context);
  const minCellV = lowestCellVoltage(recording, running, facts);
  return {
    flightTimeS,
    motorRunTimeS: motorRunTime(context),
    chargeUsedMah,
    energyUsedWh: usedEnergy(recording, rows, facts, context),
    chargeCoveredMah: coveredCharge(recording, rows, facts),
    energyCoveredWh: coveredEnergy(recording, rows, facts),
    flightChargeMah,
    peakCurrentA: peakCurrent(recording, rows, facts),
    meanCurrentA: meanCurrent(context),
    peakPowerW: peakPower(recording, rows, facts),
    peakRpm: peakRpm(recording, rows),
    minPackV: lowestPackVoltage(recording, running, facts),
    minCellV: minCellV.value === null && cells === null ? unknown("V", NO_CELL_COUNT) : minCellV,
    sagPerCellV: sagPerCell(context),
    chargeLeftPct: chargeLeft(context, chargeUsedMah),
    motorPeakC: peakTemperature(recording, "motorTemperature", rows, facts),
    packPeakC: peakTemperature(recording, "packTemperature", rows, facts),
    ...overRating(context),
    ...staticMeasures(context),
    ...restMeasures(context),
    ...controllerTemperature(context, identified.peakLag),
    ...identified.measures,
  };
}
