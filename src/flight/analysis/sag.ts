import { atMost, known, type Quantity, unknown } from "../../base/quantity/index.ts";
import { holeLimitS, smallestStep } from "../../log/recording/index.ts";
import { channelOrWhy, workingChannel } from "./channelOrWhy.ts";
import { type FlightContext, runningRows } from "./flightContext.ts";
import { NO_CELL_COUNT, SAG_WITHOUT_REST_AFTER } from "./sentences.ts";
import { noValueHere } from "./sumSentences.ts";

/**
 * Open-circuit volts are no straight line over the charge, and a rest of seconds is not all of the recovery:
 * 15 to 21 mV a cell over 40 % of the charge (community rest table; pouch cell of Ecker et al. 2015).
 */
const LINE_DOUBT_V = 0.02;

/**
 * sagPerCellV: largest distance of the volts below the open-circuit line, per cell. The line runs from rest
 * before to rest after over the charge drawn; without rest after it stays at rest before: an upper bound.
 */
export function sagPerCell(context: FlightContext): Quantity {
  const { recording, restBefore, restAfter, cells, facts } = context;
  const volts = channelOrWhy(recording, "packVoltage");
  if (volts.values === null) return unknown("V", volts.why);
  if (restBefore.packV === null) return unknown("V", restBefore.why);
  if (cells === null) return unknown("V", NO_CELL_COUNT);
  const amps = workingChannel(recording, "current");
  const endV = restAfter.packV;
  const sagV = deepestSag(context, volts.values, amps, restBefore.packV, amps ? endV : null);
  if (sagV === null) return unknown("V", noValueHere("packVoltage"));
  const gain = facts.sensors.voltageAccuracyPct / 100;
  const restErrorV = Math.max(
    restBefore.standardErrorV,
    restAfter.packV === null ? 0 : restAfter.standardErrorV,
  );
  const readingV = Math.hypot(gain * sagV, smallestStep(volts.values), 2 * restErrorV) / cells;
  const halfWidthV = Math.hypot(readingV, LINE_DOUBT_V);
  const value = sagV / cells;
  if (endV === null || amps === null) {
    return atMost(value, value + halfWidthV, "V", "derived", SAG_WITHOUT_REST_AFTER);
  }
  return known(value, halfWidthV, "V", "derived");
}

/** Null when no running row holds volts. */
function deepestSag(
  context: FlightContext,
  volts: Float64Array,
  amps: Float64Array | null,
  startV: number,
  endV: number | null,
): number | null {
  const running = runningRows(context);
  const { timeS, stepS } = context.recording;
  const totalC = amps && endV !== null ? chargeOver(timeS, amps, running, stepS, () => {}) : 0;
  const slope = totalC > 0 && endV !== null ? (endV - startV) / totalC : 0;
  let deepest = Number.NaN;
  const look = (row: number, chargeC: number) => {
    const sagV = startV + slope * chargeC - volts[row]!;
    if (!Number.isNaN(sagV) && !(sagV <= deepest)) deepest = Math.max(0, sagV);
  };
  if (slope !== 0 && amps) chargeOver(timeS, amps, running, stepS, look);
  else for (let row = running.firstRow; row <= running.lastRow; row++) look(row, 0);
  return Number.isNaN(deepest) ? null : deepest;
}

/** Runs over the rows with the charge drawn so far, coulombs; returns the whole. Holes up to the limit only. */
function chargeOver(
  timeS: Float64Array,
  amps: Float64Array,
  { firstRow, lastRow }: { readonly firstRow: number; readonly lastRow: number },
  stepS: number,
  visit: (row: number, chargeC: number) => void,
): number {
  const farthestS = Math.max(60, holeLimitS(stepS));
  let chargeC = 0;
  let before = -1;
  for (let row = firstRow; row <= lastRow; row++) {
    if (!Number.isNaN(amps[row]!)) {
      const elapsedS = before < 0 ? 0 : timeS[row]! - timeS[before]!;
      if (before >= 0 && elapsedS <= farthestS) chargeC += ((amps[row]! + amps[before]!) / 2) * elapsedS;
      before = row;
    }
    visit(row, chargeC);
  }
  return chargeC;
}
