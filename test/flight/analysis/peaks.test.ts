import { describe, expect, test } from "vitest";
import { type Facts, NO_FACTS } from "../../../src/aircraft/facts.ts";
import type { ChannelName } from "../../../src/base/channels/index.ts";
import {
  lowestCellVoltage,
  lowestPackVoltage,
  peakCurrent,
  peakPower,
  peakRpm,
  peakTemperature,
} from "../../../src/flight/analysis/peaks.ts";
import { rowsBetween, rowsWithin } from "../../../src/flight/analysis/rowsBetween.ts";
import { recordLog } from "../../../src/log/recording/index.ts";
import { readLogOf, UNCORRECTED } from "../../support/readLogOf.ts";

const ROWS = 200;
const at = (values: (row: number) => number) => Array.from({ length: ROWS }, (_, row) => values(row));
const amps = at((row) => 30 + 20 * Math.sin(row / 20));
const volts = amps.map((value, row) => 25 - 0.03 * value - row / 400);
const all = { firstRow: 0, lastRow: ROWS - 1 };

function record(channels: Partial<Record<ChannelName, readonly number[]>>) {
  return recordLog(readLogOf({ timeS: at((row) => row * 0.5), channels }), UNCORRECTED);
}

const cellFacts: Facts = { ...NO_FACTS, pack: { ...NO_FACTS.pack, cells: 6 } };

describe("peaks", () => {
  const recording = record({ current: amps, packVoltage: volts });
  const peakRow = amps.indexOf(Math.max(...amps));

  test("current: the largest sample, named, with the sensor's accuracy", () => {
    const peak = peakCurrent(recording, all, NO_FACTS);
    expect(peak).toMatchObject({ value: amps[peakRow], unit: "A", basis: "measured" });
    expect(peak).toMatchObject({ sample: { atS: peakRow * 0.5, line: peakRow + 2 } });
    if (peak.value !== null) expect(peak.high! / peak.value).toBeCloseTo(1.05, 3);
  });

  test("power: the largest product of one row, with both accuracies", () => {
    const products = amps.map((value, row) => value * volts[row]!);
    const peak = peakPower(recording, all, NO_FACTS);
    expect(peak).toMatchObject({ value: Math.max(...products), unit: "W", basis: "derived" });
    if (peak.value !== null) expect(peak.high! / peak.value - 1).toBeCloseTo(Math.hypot(0.05, 0.01), 3);
  });

  test("only rows of the range count", () => {
    const rows = { firstRow: 80, lastRow: 100 };
    expect(peakCurrent(recording, rows, NO_FACTS).value).toBe(Math.max(...amps.slice(80, 101)));
    expect(lowestPackVoltage(recording, rows, NO_FACTS).value).toBe(Math.min(...volts.slice(80, 101)));
  });

  test("a shaft speed is counted: one step wide", () => {
    const speed = record({ current: amps, shaftSpeed: at((row) => 5000 + 10 * (row % 50)) });
    const peak = peakRpm(speed, all);
    expect(peak).toMatchObject({ value: 5490, low: 5490 - 10 / Math.sqrt(3), unit: "rev/min" });
  });

  test.each(["controllerTemperature", "motorTemperature", "packTemperature"] as const)("%s", (channel) => {
    const probe = record({ [channel]: at((row) => 20 + Math.floor(row / 10)) });
    const peak = peakTemperature(probe, channel, all, NO_FACTS);
    expect(peak).toMatchObject({ value: 39, unit: "degC", sample: { atS: 95, line: 192 } });
    if (peak.value !== null) expect(peak.high! - peak.value).toBeCloseTo(Math.hypot(3, 1 / Math.sqrt(3)), 9);
  });

  test("a coarse sensor widens a peak, an offset lifts its upper end", () => {
    const coarse = record({ current: amps.map((value) => Math.round(value / 5) * 5) });
    const peak = peakCurrent(coarse, all, NO_FACTS);
    if (peak.value !== null)
      expect(peak.high! - peak.value).toBeCloseTo(Math.hypot(2.5, 5 / Math.sqrt(3)), 9);
    const offset = record({ current: amps.map((value, row) => (row < 60 ? -0.8 : value - 0.8)) });
    const low = peakCurrent(offset, all, NO_FACTS);
    if (low.value !== null) expect(low.high! - low.value - (low.value - low.low!)).toBeCloseTo(1.8, 9);
    expect.assertions(2);
  });

  test("what is not there says why", () => {
    const bare = record({ altitude: amps });
    for (const one of [
      peakCurrent(bare, all, NO_FACTS),
      peakPower(bare, all, NO_FACTS),
      peakRpm(bare, all),
      peakTemperature(bare, "controllerTemperature", all, NO_FACTS),
      lowestPackVoltage(bare, all, NO_FACTS),
      lowestCellVoltage(bare, all, cellFacts),
    ]) {
      expect(one.value).toBeNull();
      expect(one.why).toContain("no ");
    }
    const gappy = record({ current: amps.map((value, row) => (row > 50 ? Number.NaN : value)) });
    expect(peakCurrent(gappy, { firstRow: 60, lastRow: 90 }, NO_FACTS).value).toBeNull();
  });
});

describe("the lowest cell", () => {
  test("is the lowest of the cells that are logged", () => {
    const cell = (offset: number) => volts.map((value) => value / 6 + offset);
    const recording = record({
      packVoltage: volts,
      current: amps,
      cellVoltage1: cell(0.02),
      cellVoltage2: cell(-0.05),
      cellVoltage3: cell(0.03),
    });
    const lowest = lowestCellVoltage(recording, all, NO_FACTS);
    expect(lowest.value).toBeCloseTo(Math.min(...volts) / 6 - 0.05, 12);
    expect(lowest).toMatchObject({ basis: "measured", unit: "V" });
  });

  test("without cell columns is the pack over its cells, and says so", () => {
    const recording = record({ packVoltage: volts, current: amps });
    const lowest = lowestCellVoltage(recording, all, cellFacts);
    expect(lowest.value).toBeCloseTo(Math.min(...volts) / 6, 12);
    expect(lowest).toMatchObject({ basis: "derived" });
    expect(lowest.why).toContain("weakest cell");
    expect(lowestCellVoltage(recording, all, NO_FACTS).value).toBeNull();
  });
});

describe("rows between two times", () => {
  const timeS = Float64Array.from([0, 1, 2, 3, 4]);
  test("with one more on either side, to cut", () => {
    expect(rowsBetween(timeS, 1.5, 2.5)).toEqual({ firstRow: 1, lastRow: 3 });
    expect(rowsBetween(timeS, 1, 3)).toEqual({ firstRow: 1, lastRow: 3 });
    expect(rowsBetween(timeS, -1, 9)).toEqual({ firstRow: 0, lastRow: 4 });
  });
  test("strictly within", () => {
    expect(rowsWithin(timeS, 0.5, 2.5)).toEqual({ firstRow: 1, lastRow: 2 });
    expect(rowsWithin(timeS, 1, 3)).toEqual({ firstRow: 1, lastRow: 3 });
    const none = rowsWithin(timeS, 1.2, 1.8);
    expect(none.firstRow).toBeGreaterThan(none.lastRow);
  });
});
