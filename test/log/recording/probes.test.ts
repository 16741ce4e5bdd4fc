import { describe, expect, test } from "vitest";
import { NO_FACTS } from "../../../src/aircraft/facts.ts";
import { analyseRecording } from "../../../src/flight/analysis/index.ts";
import { recordLog } from "../../../src/log/recording/index.ts";
import { seededRandom } from "../../generator/index.ts";
import { readLogOf, UNCORRECTED } from "../../support/readLogOf.ts";

const RATE_HZ = 5;

/** A minute of rest, four of load, two of rest; a controller that warms by 50 degC with a time constant of 60 s. */
function flight() {
  const amps = Array.from({ length: 420 * RATE_HZ }, (_, row) =>
    row < 60 * RATE_HZ || row >= 300 * RATE_HZ ? 0.5 : 40 + 5 * Math.sin(row / 9),
  );
  let warmth = 0;
  const celsius = amps.map((value) => {
    warmth += ((value > 1 ? 50 : 0) - warmth) / (60 * RATE_HZ);
    return Math.round(20 + warmth);
  });
  return { amps, volts: amps.map((value) => 25 - 0.03 * value), celsius };
}

function record(celsius: readonly number[]) {
  const { amps, volts } = flight();
  const timeS = amps.map((_, row) => row / RATE_HZ);
  return recordLog(
    readLogOf({ timeS, channels: { current: amps, packVoltage: volts, controllerTemperature: celsius } }),
    UNCORRECTED,
  );
}

const FACTS = { ...NO_FACTS, controller: { ...NO_FACTS.controller, limitC: 100 } };
const measuresOf = (celsius: readonly number[]) =>
  analyseRecording(record(celsius), FACTS, { ambientC: 20, startPct: null })[0]!.measures;
const codes = (celsius: readonly number[]) => record(celsius).notices.map(({ code }) => code);
const changed = (from: number, to: number, value: (celsius: number) => number) =>
  flight().celsius.map((celsius, row) => (row >= from && row < to ? value(celsius) : celsius));

describe("a temperature that nothing physical shows", () => {
  test.each([1, 3, 20])("a jump of 60 degC for %d rows is masked, listed and passes no limit", (rows) => {
    const celsius = changed(1000, 1000 + rows, (true_) => true_ + 60);
    const { repairs } = record(celsius);
    expect(repairs.map(({ row }) => row)).toEqual(Array.from({ length: rows }, (_, k) => 1000 + k));
    expect(codes(celsius)[0]).toBe(rows === 1 ? "spike-masked" : "jump-masked");
    expect(measuresOf(celsius).controllerPeakC.value).toBe(
      measuresOf(flight().celsius).controllerPeakC.value,
    );
  });

  test("a jump down in two steps is masked as well", () => {
    const celsius = changed(1000, 1009, (true_) => true_ - 45);
    celsius[999] = celsius[998]! - 20;
    expect(record(celsius).repairs).toHaveLength(10);
  });

  test.each([0, 180])(
    "a probe that reads %d from some row on: its rows are missing, the margin a bound",
    (stays) => {
      const celsius = changed(1100, 3000, () => stays);
      expect(codes(celsius)).toEqual(["probe-failed"]);
      const { controllerPeakC, controllerMarginC } = measuresOf(celsius);
      expect(controllerPeakC).toMatchObject({ bound: "atLeast", high: null });
      expect(controllerMarginC).toMatchObject({ bound: "atMost", low: null });
    },
  );

  test("a probe that comes alive late leaves its first rows missing", () => {
    const recording = record(changed(0, 500, () => 130));
    expect(recording.notices.map(({ code }) => code)).toEqual(["probe-failed"]);
    expect(recording.channels.get("controllerTemperature")![499]).toBeNaN();
    expect(recording.channels.get("controllerTemperature")![500]).not.toBeNaN();
  });

  test("a probe stuck at one reading through load and rest", () => {
    const celsius = changed(1000, 3000, () => flight().celsius[1000]!);
    expect(codes(celsius)).toEqual(["probe-failed"]);
    expect(measuresOf(celsius).controllerPeakC).toMatchObject({ bound: "atLeast" });
  });

  test("nothing is said of honest probes, noisy, coarse or slow ones among them", () => {
    const { celsius } = flight();
    const noise = seededRandom(11).normal;
    for (const each of [
      celsius,
      celsius.map((value) => value + noise()),
      celsius.map((value) => 5 * Math.round(value / 5)),
      celsius.map((_, row) => celsius[row - (row % (4 * RATE_HZ))]!),
    ]) {
      expect(codes(each)).toEqual([]);
    }
  });

  test("a probe that dies in the first half, at one reading: the living part stays", () => {
    const dead = changed(140 * RATE_HZ, Number.POSITIVE_INFINITY, () => 125);
    const living = record(dead).channels.get("controllerTemperature")!;
    expect(Number.isNaN(living[300 * RATE_HZ]!)).toBe(true);
    expect(living[100 * RATE_HZ]).toBe(flight().celsius[100 * RATE_HZ]);
    expect(measuresOf(dead).controllerPeakC.value).toBeLessThan(80);
  });
});
