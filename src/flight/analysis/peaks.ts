import type { Facts } from "../../aircraft/facts.ts";
import { type ChannelName, channelFacts, isCellChannel } from "../../base/channels/index.ts";
import {
  atLeast,
  between,
  highEnd,
  known,
  lowEnd,
  type Quantity,
  type SampleReference,
  unknown,
} from "../../base/quantity/index.ts";
import { median } from "../../base/statistics/index.ts";
import { type Recording, smallestStep } from "../../log/recording/index.ts";
import { channelOrWhy, workingChannel } from "./channelOrWhy.ts";
import { isAtCeiling } from "./currentAtCeiling.ts";
import { highest, highestProduct, lowest } from "./extremes.ts";
import { hiddenOffsetA } from "./hiddenOffset.ts";
import type { RowRange } from "./segments.ts";
import { NO_CELL_COUNT } from "./sentences.ts";
import { sumBasis } from "./sumBasis.ts";
import {
  CURRENT_UNSEEN,
  LOWER_BOUND_CEILING,
  MEAN_OF_CELLS,
  noValueHere,
  probeSilent,
} from "./sumSentences.ts";
import { unseenCurrent } from "./unseenCurrent.ts";

/** peakCurrentA: largest logged current of the rows. Interval: sensor gain, one step, and a hidden offset. */
export function peakCurrent(
  recording: Recording,
  rows: RowRange,
  { sensors }: Facts,
  running: RowRange = rows,
): Quantity {
  const amps = channelOrWhy(recording, "current");
  if (amps.values === null) return unknown("A", amps.why);
  const basis = sumBasis(recording, amps.values);
  const peak = highest(amps.values, rows);
  if (peak === null) return unknown("A", noValueHere("current"));
  const gain = (sensors.currentAccuracyPct / 100) * peak.value;
  const halfWidth = Math.hypot(gain, halfWidthOfStep(basis.stepA));
  const hidden = hiddenOffsetA(basis.offsetA);
  const sample = sampleAt(recording, peak.row);
  const low = peak.value - halfWidth;
  const why = whyHigher(recording, running, basis.ceilingA === peak.value);
  if (why !== null) return withSample(atLeast(peak.value, low, "A", "measured", why), sample);
  return between(peak.value, low, peak.value + halfWidth + hidden, "A", "measured", { sample });
}

function withSample(quantity: Quantity, sample: SampleReference): Quantity {
  return quantity.value === null ? quantity : { ...quantity, sample };
}

/** Why the true peak may lie higher than any row shows, or null. */
function whyHigher(recording: Recording, running: RowRange, isAtCeiling: boolean): string | null {
  if (isAtCeiling) return LOWER_BOUND_CEILING;
  return unseenCurrent(recording, running).lostS > 0 ? CURRENT_UNSEEN : null;
}

/** peakPowerW: largest product of volts and current of one row. */
export function peakPower(
  recording: Recording,
  rows: RowRange,
  { sensors }: Facts,
  running: RowRange = rows,
): Quantity {
  const amps = channelOrWhy(recording, "current");
  if (amps.values === null) return unknown("W", amps.why);
  const volts = channelOrWhy(recording, "packVoltage");
  if (volts.values === null) return unknown("W", volts.why);
  const basis = sumBasis(recording, amps.values);
  const peak = highestProduct(amps.values, volts.values, rows);
  if (peak === null) return unknown("W", noValueHere("current"));
  const voltsThere = volts.values[peak.row]!;
  const gains = Math.hypot(sensors.currentAccuracyPct, sensors.voltageAccuracyPct) / 100;
  const halfWidth = Math.hypot(gains * peak.value, halfWidthOfStep(basis.stepA) * voltsThere);
  const high = peak.value + halfWidth + hiddenOffsetA(basis.offsetA) * voltsThere;
  const sample = sampleAt(recording, peak.row);
  const low = peak.value - halfWidth;
  const why = whyHigher(recording, running, isAtCeiling(recording, amps.values, rows));
  if (why !== null) return withSample(atLeast(peak.value, low, "W", "derived", why), sample);
  return between(peak.value, low, high, "W", "derived", { sample });
}

/** peakRpm: highest shaft speed. A counted speed has no gain error; its interval is one step. */
export function peakRpm(recording: Recording, rows: RowRange): Quantity {
  return extremeOf(recording, "shaftSpeed", rows, "highest", 0, 0);
}

/** A probe that stays silent in rows of the log for longer than this, and than five usual steps, may miss the peak. */
const LONGEST_SILENCE_S = 30;
const SILENT_STEPS = 5;

/** controllerPeakC, motorPeakC, packPeakC: highest reading of a probe as logged; at least that where it fell silent. */
export function peakTemperature(
  recording: Recording,
  channel: "controllerTemperature" | "motorTemperature" | "packTemperature",
  rows: RowRange,
  { sensors }: Facts,
  running: RowRange = rows,
): Quantity {
  const peak = extremeOf(recording, channel, rows, "highest", 0, sensors.temperatureAccuracyC);
  if (peak.value === null) return peak;
  const silentS = longestSilenceS(recording, recording.channels.get(channel)!, running);
  if (silentS === null) return peak;
  const bound = atLeast(peak.value, lowEnd(peak), peak.unit, peak.basis, probeSilent(silentS));
  return peak.sample === undefined ? bound : withSample(bound, peak.sample);
}

/** The longest time between readings with rows in between while the motor runs, null where it is an ordinary one. */
function longestSilenceS(
  { timeS }: Recording,
  values: Float64Array,
  { firstRow, lastRow }: RowRange,
): number | null {
  let readS = timeS[firstRow]!;
  let longestS = 0;
  for (let row = firstRow; row <= lastRow; row++) {
    const isSilent = Number.isNaN(values[row]!);
    if (isSilent && row < lastRow) continue;
    if (isSilent || Number.isNaN(values[row - 1] ?? 0)) longestS = Math.max(longestS, timeS[row]! - readS);
    readS = timeS[row]!;
  }
  if (longestS <= LONGEST_SILENCE_S) return null;
  const usualS = usualGapS(timeS, values, { firstRow, lastRow });
  return longestS > SILENT_STEPS * usualS ? longestS : null;
}

/** Median time between readings, from the first row to the last; 0 with hardly any. */
function usualGapS(timeS: Float64Array, values: Float64Array, { firstRow, lastRow }: RowRange): number {
  const gaps: number[] = [];
  let readS = timeS[firstRow]!;
  for (let row = firstRow; row <= lastRow; row++) {
    if (Number.isNaN(values[row]!) && row < lastRow) continue;
    gaps.push(timeS[row]! - readS);
    readS = timeS[row]!;
  }
  return gaps.length > 2 ? median(gaps) : 0;
}

/** minPackV: lowest pack volts of the rows (those in which the motor runs are the caller's choice). */
export function lowestPackVoltage(recording: Recording, rows: RowRange, { sensors }: Facts): Quantity {
  return extremeOf(recording, "packVoltage", rows, "lowest", sensors.voltageAccuracyPct / 100, 0);
}

/** minCellV: the lowest cell that was logged; without cell channels the pack's lowest over the cell count. */
export function lowestCellVoltage(recording: Recording, rows: RowRange, facts: Facts): Quantity {
  const cells = [...recording.channels.keys()].filter(isCellChannel);
  const working = cells.filter((cell) => workingChannel(recording, cell) !== null);
  const share = facts.sensors.voltageAccuracyPct / 100;
  const each = working.map((cell) => extremeOf(recording, cell, rows, "lowest", share, 0));
  const found = each.flatMap((cell) => (cell.value === null ? [] : [cell]));
  const weakest = found.toSorted((one, other) => one.value - other.value)[0];
  return weakest ?? lowestMeanCell(lowestPackVoltage(recording, rows, facts), facts.pack.cells);
}

function lowestMeanCell(pack: Quantity, cells: number | null): Quantity {
  if (pack.value === null) return unknown("V", pack.why);
  if (cells === null) return unknown("V", NO_CELL_COUNT);
  const low = lowEnd(pack) / cells;
  const high = highEnd(pack) / cells;
  const more = pack.sample ? { sample: pack.sample, why: MEAN_OF_CELLS } : { why: MEAN_OF_CELLS };
  return between(pack.value / cells, low, high, "V", "derived", more);
}

/** The highest or lowest value of a channel in the rows. Interval: gain, the sensor's accuracy, one step. */
export function extremeOf(
  recording: Recording,
  channel: ChannelName,
  rows: RowRange,
  which: "highest" | "lowest",
  gainShare: number,
  accuracy: number,
): Quantity {
  const { unit } = channelFacts(channel);
  const logged = channelOrWhy(recording, channel);
  if (logged.values === null) return unknown(unit, logged.why);
  const found = which === "highest" ? highest(logged.values, rows) : lowest(logged.values, rows);
  if (found === null) return unknown(unit, noValueHere(channel));
  const halfWidth = Math.hypot(
    gainShare * found.value,
    accuracy,
    halfWidthOfStep(smallestStep(logged.values)),
  );
  return known(found.value, halfWidth, unit, "measured", { sample: sampleAt(recording, found.row) });
}

/** At k = 2, from a reading that moves in steps: 2 step / sqrt(12) (JCGM 100:2008, 4.3.7). */
function halfWidthOfStep(step: number): number {
  return step / Math.sqrt(3);
}

function sampleAt(recording: Recording, row: number): SampleReference {
  return { atS: recording.timeS[row]!, line: recording.lineOfRow(row) };
}
