import { describe, expect, test } from "vitest";
import { type Facts, NO_FACTS } from "../../../src/aircraft/facts.ts";
import { analyseRecording, cellCountQuestion, type DayFacts } from "../../../src/flight/analysis/index.ts";
import { NO_AMBIENT, NO_CELL_COUNT } from "../../../src/flight/analysis/sentences.ts";
import {
  FLIGHT,
  OPEN_V,
  REST,
  type Stretch,
  syntheticRecording,
  TAXI,
} from "../../support/syntheticRecording.ts";

const FACTS: Facts = {
  ...NO_FACTS,
  flyingMassKg: 7,
  pack: { ...NO_FACTS.pack, cells: 8, capacityMah: 5000 },
  controller: { ...NO_FACTS.controller, continuousA: 40, limitC: 100 },
};
const DAY: DayFacts = { ambientC: 15, startPct: null };
const CHANNELS = ["packVoltage", "current", "controllerTemperature"] as const;
const FULL: Stretch = { lengthS: 5, amps: 50 };
const STRETCHES = [REST, FULL, TAXI, FLIGHT, TAXI, REST];

const measuresOf = (stretches: readonly Stretch[] = STRETCHES, facts = FACTS, day = DAY) =>
  analyseRecording(syntheticRecording(stretches, CHANNELS), facts, day)[0]!.measures;

describe("static run", () => {
  test("is the full-throttle plateau on the ground", () => {
    const measures = measuresOf();
    expect(measures.staticCurrentA.value).toBe(50);
    expect(measures.staticPowerW.value).toBeCloseTo(50 * (OPEN_V - 2.5), 9);
    expect(measures.powerLoadingWPerKg.value).toBeCloseTo((50 * (OPEN_V - 2.5)) / 7, 9);
    expect(measures.staticRpm).toMatchObject({ value: null, why: "no shaft speed channel in this log" });
  });

  test("a plateau that runs on into flight power is a take-off", () => {
    expect(measuresOf([REST, FULL, FLIGHT, TAXI, REST]).staticCurrentA.value).toBeNull();
  });

  test("a logged throttle decides what full throttle is", () => {
    const stretches = [REST, { ...FULL, amps: 44, throttlePct: 100 }, TAXI, { ...FLIGHT, amps: 48 }, REST];
    const recording = syntheticRecording(stretches, ["packVoltage", "current", "throttle"]);
    expect(analyseRecording(recording, FACTS, DAY)[0]!.measures.staticCurrentA.value).toBe(44);
  });
});

describe("over the rating", () => {
  test("counts the straight line between rows, and the longest stretch", () => {
    const measures = measuresOf([REST, FULL, TAXI, { ...FULL, lengthS: 3 }, TAXI, FLIGHT, TAXI, REST]);
    // Each edge adds the part of one 0.2 s step above 40 A: from 0.2 A (10 / 49.8) and to or from 2.5 A (10 / 47.5).
    const first = 4.8 + 0.2 * (10 / 49.8 + 10 / 47.5);
    const second = 2.8 + 0.2 * (20 / 47.5);
    expect(measures.overRatingS.value).toBeCloseTo(first + second, 9);
    expect(measures.longestOverRatingS.value).toBeCloseTo(first, 9);
  });
});

describe("a current sensor that reads negative at rest", () => {
  const OFFSET_A = -4;
  const truth = measuresOf();
  const read = measuresOf(STRETCHES.map((one) => ({ ...one, amps: one.amps + OFFSET_A })));

  test.each([
    "staticCurrentA",
    "staticPowerW",
    "powerLoadingWPerKg",
    "peakCurrentA",
    "peakPowerW",
    "overRatingS",
    "longestOverRatingS",
    "meanCurrentA",
    "chargeUsedMah",
  ] as const)("the interval of %s reaches up to what it hides", (name) => {
    const { low, high } = read[name] as { low: number; high: number };
    expect(low).toBeLessThanOrEqual(truth[name].value!);
    expect(high).toBeGreaterThanOrEqual(truth[name].value!);
  });
});

describe("pack", () => {
  test("rest volts, sag below the open-circuit line, and the charge left", () => {
    const measures = measuresOf();
    expect(measures.restPackV.value).toBeCloseTo(OPEN_V - 0.01, 9);
    expect(measures.restCellV.value).toBeCloseTo((OPEN_V - 0.01) / 8, 9);
    expect(measures.sagPerCellV.value).toBeCloseTo((0.05 * 50 - 0.01) / 8, 6);
    const used = measures.chargeUsedMah.value!;
    expect(measures.chargeLeftPct.value).toBeCloseTo(100 - used / 50, 9);
  });

  test("without rest after the flight the sag is an upper bound", () => {
    expect(measuresOf([REST, TAXI, FLIGHT, TAXI, { ...REST, lengthS: 5 }]).sagPerCellV).toMatchObject({
      bound: "atMost",
      low: null,
    });
  });

  test("a pack that rests at 3.80 V was 40 to 56 % full by source: the charge left is that band less what was used", () => {
    const openV = 8 * 3.8 + 0.01;
    const stretches = STRETCHES.map((one) => ({ ...one, openV }));
    const exact = { ...FACTS, sensors: { ...FACTS.sensors, voltageAccuracyPct: 0, currentAccuracyPct: 0 } };
    const { chargeLeftPct, chargeUsedMah } = measuresOf(stretches, exact);
    const usedPct = chargeUsedMah.value! / 50;
    expect(chargeLeftPct).toMatchObject({ bound: "interval" });
    // The sampling of the charge adds up to 2 points. Curves at 3.80 V: community rest table 40 %, pouch cell (Ecker et al. 2015) 55 to 56 %.
    expect(Math.abs(chargeLeftPct.value! + usedPct - 48)).toBeLessThan(8);
    expect((chargeLeftPct as { low: number }).low + usedPct).toBeGreaterThan(38);
    expect((chargeLeftPct as { high: number }).high + usedPct).toBeLessThan(58);
  });

  test("what the pilot states of the start wins over the volts", () => {
    const { chargeLeftPct, chargeUsedMah } = measuresOf(STRETCHES, FACTS, { ...DAY, startPct: 80 });
    expect(chargeLeftPct.value).toBeCloseTo(80 - chargeUsedMah.value! / 50, 9);
  });

  test("without a cell count nothing is said per cell", () => {
    const { restCellV, minCellV, restPackV } = measuresOf(STRETCHES, NO_FACTS);
    expect(restPackV.value).not.toBeNull();
    expect(restCellV).toMatchObject({ value: null, why: NO_CELL_COUNT });
    expect(minCellV.value).toBeNull();
  });
});

describe("controller temperature", () => {
  test("margin to the limit; the hot day adds the warmer air one for one", () => {
    const measures = measuresOf();
    expect(measures.controllerPeakC.value).toBe(70);
    expect(measures.controllerMarginC.value).toBe(30);
    expect(measures.controllerHotDayPeakC.value).toBe(70 + 35 - 15);
    expect(measures.controllerHotDayMarginC.value).toBe(10);
    const { value, low, high } = measures.controllerHotDayPeakC as {
      value: number;
      low: number;
      high: number;
    };
    // Upwards only: r b dT / (1 - r b) with r = 55 K, b = 0.005 per K, dT = 20 K.
    expect(high - value - (value - low)).toBeCloseTo((55 * 0.005 * 20) / (1 - 55 * 0.005), 9);
  });

  test("without the day's air the controller's own first reading stands in, wider", () => {
    const width = (day: DayFacts) => {
      const { low, high } = measuresOf(STRETCHES, FACTS, day).controllerHotDayPeakC as {
        low: number;
        high: number;
      };
      return high - low;
    };
    expect(width({ ambientC: null, startPct: null })).toBeGreaterThan(width(DAY));
    const underPower = measuresOf([FLIGHT, TAXI, REST], FACTS, { ambientC: null, startPct: null });
    expect(underPower.controllerHotDayPeakC).toMatchObject({ value: null, why: NO_AMBIENT });
  });

  test("a dead sensor gives no peak, no margin, no hot day", () => {
    const dead = [{ channel: "controllerTemperature", why: "the probe never moves" }] as const;
    const recording = syntheticRecording(STRETCHES, CHANNELS, 5, { dead });
    const { measures } = analyseRecording(recording, FACTS, DAY)[0]!;
    for (const name of ["controllerPeakC", "controllerMarginC", "controllerHotDayPeakC"] as const) {
      expect(measures[name]).toMatchObject({ value: null, why: "the probe never moves" });
    }
  });
});

describe("cell count", () => {
  const question = (cells: number, openV = OPEN_V) =>
    cellCountQuestion(syntheticRecording(STRETCHES.map((one) => ({ ...one, openV }))), {
      ...FACTS,
      pack: { ...FACTS.pack, cells },
    });

  test("one that fits is no question, nor is a full pack of one cell less: it may be part-charged", () => {
    expect(question(8)).toBeNull();
    expect(question(9)).toBeNull();
  });

  test("one that cannot fit names the options", () => {
    expect(question(7)).toMatchObject({
      severity: "question",
      options: ["--cells 8", "--cells 9", "--cells 10"],
    });
    expect(question(12)?.options).toContain("--cells 8");
  });
});
