import { describe, expect, it } from "vitest";
import { type Facts, NO_FACTS } from "../../../src/aircraft/facts.ts";
import type { ChannelName } from "../../../src/base/channels/index.ts";
import { atLeast, known, type Quantity, unknown } from "../../../src/base/quantity/index.ts";
import { cellCountQuestion, restedPackV } from "../../../src/flight/analysis/cellCount.ts";
import {
  fullThrottleSettlesC,
  fullThrottleUntilLimitS,
} from "../../../src/flight/analysis/controllerHeatFullThrottle.ts";
import { analyseRecording } from "../../../src/flight/analysis/index.ts";
import { levelRise } from "../../../src/flight/analysis/levelRise.ts";
import { peakTemperature } from "../../../src/flight/analysis/peaks.ts";
import { cellRangeOfRows, meanCellOfRows, powerOfRows } from "../../../src/flight/analysis/rowSeries.ts";
import { impossibleChargeLeft, pausesBridged } from "../../../src/flight/analysis/sentences.ts";
import { groundLoadAt, taxiLoadAt } from "../../../src/flight/analysis/touchdownSigns.ts";
import { recordingOf } from "../../support/recordingOf.ts";
import { FLIGHT, OPEN_V, REST, syntheticRecording, TAXI } from "../../support/syntheticRecording.ts";

type Channels = Readonly<Partial<Record<ChannelName, readonly number[]>>>;
const NONE = Number.NaN;
const DAY = { ambientC: 15, startPct: null };

function recorded(channels: Channels, stepS = 1) {
  const rows = Object.values(channels)[0]!.length;
  return recordingOf({
    timeS: Float64Array.from({ length: rows }, (_, row) => row * stepS),
    channels: new Map(
      (Object.entries(channels) as [ChannelName, number[]][]).map(([name, values]) => [
        name,
        Float64Array.from(values),
      ]),
    ),
  });
}

describe("a rise from one level to another", () => {
  const times = Array.from({ length: 20 }, (_, at) => at);
  const step = (before: number, after: number, at = 8) => times.map((s) => (s < at ? before : after));

  it("is found where it is, as high as it is", () => {
    for (const at of [5, 8, 14])
      expect(levelRise(times, step(1, 3, at), 3, 0.5)).toEqual({ atS: at, rise: 2 });
  });

  it("is none when it falls, is too small, too near an end, or lost in the scatter", () => {
    expect(levelRise(times, step(3, 1), 3, 0.5)).toBeNull();
    expect(levelRise(times, step(1, 1.4), 3, 0.5)).toBeNull();
    expect(levelRise(times, step(1, 1), 3, 0)).toBeNull();
    expect(levelRise(times.slice(0, 5), step(1, 3, 2).slice(0, 5), 3, 0.5)).toBeNull();
    const shaken = times.map((s) => (s < 10 ? 1 : 2) + (s % 2 === 0 ? 3 : -3));
    expect(levelRise(times, shaken, 3, 0.5)).toBeNull();
  });
});

describe("series of rows", () => {
  const both = recorded({ packVoltage: [20, 19, NONE], current: [1, 10, 5] });

  it("power is volts times amps of the same row, missing where either is", () => {
    expect([...powerOfRows(both)!]).toEqual([20, 190, NONE]);
    expect(powerOfRows(recorded({ packVoltage: [20, 19] }))).toBeNull();
    expect(powerOfRows(recorded({ current: [1, 2] }))).toBeNull();
    expect(powerOfRows(recorded({ packVoltage: [NONE, NONE], current: [1, 2] }))).toBeNull();
  });

  it("the mean cell is the pack over its cells", () => {
    expect([...meanCellOfRows(both, 5)!]).toEqual([4, 3.8, NONE]);
    expect(meanCellOfRows(recorded({ current: [1] }), 5)).toBeNull();
  });

  it("the lowest and the highest cell of each row are of those that were logged", () => {
    const cells = recorded({
      cellVoltage1: [4.1, 3.9, NONE, NONE],
      cellVoltage2: [4.0, 4.0, 3.8, NONE],
      cellVoltage3: [4.2, NONE, 3.7, NONE],
      cellVoltage4: [NONE, NONE, NONE, NONE],
    });
    const { lowest, highest } = cellRangeOfRows(cells)!;
    expect([...lowest]).toEqual([4.0, 3.9, 3.7, NONE]);
    expect([...highest]).toEqual([4.2, 4.0, 3.8, NONE]);
    expect(cellRangeOfRows(both)).toBeNull();
  });
});

describe("full throttle held on a controller", () => {
  const air = { ambientC: 20, halfWidthC: 0 };
  const exactly = (value: number, unit: string) => known(value, 0, unit, "measured");
  const heat = { timeConstantS: exactly(60, "s"), risePerA2: exactly(0.01, "degC/A2") };
  const none = unknown("s", "too short");

  // First-order warming: T(t) = Ta + a I^2 (1 - exp(-t / tau)).
  it("settles at the air and a I^2, and reaches a limit after -tau ln(1 - (limit - air) / (a I^2))", () => {
    expect(fullThrottleSettlesC(heat, 100, air)).toMatchObject({ value: 120, low: 120, high: 120 });
    const until = fullThrottleUntilLimitS(heat, 100, 100, air);
    expect(until.value).toBeCloseTo(-60 * Math.log(1 - 80 / 100), 9);
    expect(fullThrottleUntilLimitS(heat, 100, 125, air).value).toBeNull();
  });

  it("widens with the air and with the fit, upwards without end where it may never reach the limit", () => {
    const loose = { ambientC: 20, halfWidthC: 3 };
    expect(fullThrottleSettlesC(heat, 100, loose)).toMatchObject({ low: 117, high: 123 });
    const doubtful = { ...heat, risePerA2: known(0.01, 0.002, "degC/A2", "measured") };
    expect(fullThrottleSettlesC(doubtful, 100, air)).toMatchObject({ low: 100, high: 140 });
    const soon = fullThrottleUntilLimitS(doubtful, 100, 90, air) as { low: number; high: number };
    expect(soon.low).toBeCloseTo(-60 * Math.log(1 - 70 / 120), 6);
    expect(soon.high).toBeCloseTo(-60 * Math.log(1 - 70 / 80), 6);
    expect(fullThrottleUntilLimitS(doubtful, 100, 110, air)).toMatchObject({ high: null, bound: "atLeast" });
    const perhaps = fullThrottleUntilLimitS(doubtful, 100, 130, air);
    expect(perhaps).toMatchObject({ value: null, why: expect.stringMatching(/\d+ s/) });
  });

  it.each<[string, Quantity]>([
    ["the fit has no rise", fullThrottleSettlesC({ ...heat, risePerA2: none }, 100, air)],
    ["no full throttle was seen", fullThrottleSettlesC(heat, null, air)],
    [
      "the fit has no time constant",
      fullThrottleUntilLimitS({ ...heat, timeConstantS: none }, 100, 100, air),
    ],
    [
      "the fit has no rise for the time",
      fullThrottleUntilLimitS({ ...heat, risePerA2: none }, 100, 100, air),
    ],
    ["no full throttle was seen in time", fullThrottleUntilLimitS(heat, null, 100, air)],
    ["no limit is stated", fullThrottleUntilLimitS(heat, 100, null, air)],
    ["the air is hotter than the limit", fullThrottleUntilLimitS(heat, 100, 20, air)],
  ])("is not told when %s", (_, quantity) => {
    expect(quantity.value).toBeNull();
    expect((quantity as { why: string }).why).not.toBe("");
  });

  it("an open end of the fit counts as its value", () => {
    const open = { ...heat, risePerA2: atLeast(0.01, 0.008, "degC/A2", "measured", "cut") };
    expect(fullThrottleSettlesC(open, 100, air)).toMatchObject({ value: 120, high: 140 });
  });
});

describe("cells of the aircraft file against the volts at rest", () => {
  const withCells = (cells: number | null): Facts => ({ ...NO_FACTS, pack: { ...NO_FACTS.pack, cells } });
  const rested = syntheticRecording([REST, FLIGHT, REST]);

  it("the volts at rest are those before the first run, else the highest", () => {
    expect(restedPackV(rested)).toBeCloseTo(OPEN_V - 0.01, 9);
    expect(restedPackV(syntheticRecording([FLIGHT, TAXI]))).toBeCloseTo(OPEN_V - 0.125, 9);
    expect(restedPackV(recorded({ packVoltage: [20, NONE, 21, 19] }))).toBe(21);
    expect(restedPackV(recorded({ packVoltage: [NONE, NONE] }))).toBeNull();
    expect(restedPackV(recorded({ current: [1, 2] }))).toBeNull();
  });

  it("are asked about only where no such cell rests", () => {
    expect(cellCountQuestion(rested, withCells(8))).toBeNull();
    expect(cellCountQuestion(rested, withCells(null))).toBeNull();
    expect(cellCountQuestion(recorded({ current: [1, 2] }), withCells(8))).toBeNull();
    expect(cellCountQuestion(rested, withCells(5))?.options).toContain("--cells 8");
  });

  it("that no count explains point at the unit", () => {
    const asked = cellCountQuestion(recorded({ packVoltage: [1.2, 1.2, 1.2] }), withCells(8));
    expect(asked).toMatchObject({ options: [], text: expect.stringContaining("unit of the volts") });
  });
});

describe("a probe that falls silent", () => {
  const running = { firstRow: 0, lastRow: 199 };
  const probe = (isSilent: (row: number) => boolean) =>
    peakTemperature(
      recorded({
        controllerTemperature: Array.from({ length: 200 }, (_, row) =>
          isSilent(row) ? NONE : 20 + row / 10,
        ),
      }),
      "controllerTemperature",
      running,
      NO_FACTS,
    );

  it("for more than half a minute saw at least what it shows, for less all of it", () => {
    expect(probe((row) => row >= 100 && row < 120)).toMatchObject({ value: 39.9 });
    expect(probe((row) => row >= 100 && row < 120).value).not.toBeNull();
    expect(probe((row) => row >= 100 && row < 120)).not.toHaveProperty("bound");
    for (const silent of [
      (row: number) => row >= 100 && row < 150,
      (row: number) => row >= 150,
      (row: number) => row < 50,
    ]) {
      expect(probe(silent)).toMatchObject({
        bound: "atLeast",
        high: null,
        sample: { line: expect.any(Number) },
      });
    }
  });

  it("in most rows, as a slow one does, is an ordinary probe", () => {
    expect(probe((row) => row % 20 !== 0)).not.toHaveProperty("bound");
  });

  it("in all of them has no peak", () => expect(probe(() => true).value).toBeNull());
});

describe("a charge counter beside the current", () => {
  const log = (counterOf: (mah: number, row: number) => number) => {
    const flight = syntheticRecording([REST, FLIGHT, REST], ["packVoltage", "current"], 1);
    const current = flight.channels.get("current")!.map((amps, row) => amps + (row % 10) / 10);
    let mah = 0;
    const chargeCounter = current.map((amps, row) => {
      mah += row === 0 ? 0 : amps / 3.6;
      return counterOf(mah, row);
    });
    const channels = new Map([
      ...flight.channels,
      ["current", current],
      ["chargeCounter", chargeCounter],
    ] as const);
    const [found] = analyseRecording(recordingOf({ timeS: flight.timeS, channels }), NO_FACTS, DAY);
    return found!.notices.filter(({ code }) => code === "charge-counter-differs");
  };

  it("is believed where both agree, also with gaps, counting down, or after one restart", () => {
    for (const agreeing of [
      (mah: number) => mah,
      (mah: number, row: number) => (row % 7 === 0 ? NONE : mah),
      (mah: number) => 5000 - mah,
    ]) {
      expect(log(agreeing)).toEqual([]);
    }
  });

  it("is named with both figures where it differs, up or down", () => {
    expect(log((mah) => 1.4 * mah)[0]?.text).toMatch(/charge counter says 1\d{3} mAh/);
    expect(log((mah) => 0.7 * mah)).toHaveLength(1);
  });

  it("says nothing where it hardly counts, goes both ways or holds nothing", () => {
    for (const silent of [
      (mah: number) => mah / 100,
      (mah: number, row: number) => (row % 9 < 4 ? mah : 2000 - mah),
      () => NONE,
    ]) {
      expect(log(silent)).toEqual([]);
    }
  });
});

describe("sentences about a flight", () => {
  it("name three pauses and count the rest", () => {
    const pause = { pauseS: 90, lineBefore: 10, lineAfter: 20 };
    expect(pausesBridged([pause]).text).not.toContain("more times");
    expect(pausesBridged(Array(5).fill(pause)).text).toContain("and 2 more times");
  });

  it("say why a charge left cannot be", () => {
    expect(impossibleChargeLeft(-8).text).toContain("-8 %");
    expect(impossibleChargeLeft(-8).text).toContain("more than it holds");
    expect(impossibleChargeLeft(104).text).toContain("100 % at most");
  });
});

describe("signs of a touchdown in the load of the motor", () => {
  /** Taxi out to 10 s, flight to 50 s, then what `tailOf` says until 90 s; one row a half second. */
  const END_S = 90;
  const trace = (loadAt: (s: number) => number, turnsAt: (s: number) => number = () => 3000) => {
    const timeS = Float64Array.from({ length: 2 * END_S + 1 }, (_, at) => at / 2);
    const load = Float32Array.from(timeS, loadAt);
    const recording = recordingOf({ timeS, channels: new Map([["shaftSpeed", timeS.map(turnsAt)]]) });
    return {
      recording,
      trace: { basis: "power", firstRow: 0, load, isMissing: new Uint8Array(load.length), timeS } as const,
      tail: [...timeS.keys()].filter((at) => timeS[at]! >= 50),
    };
  };
  const moments = { startS: 0, endS: END_S, takeOffS: 10, flightLevel: 300, powerEndS: 50 };
  const flown = (tail: (s: number) => number) => (s: number) => (s < 10 ? 100 : s < 50 ? 800 : tail(s));
  const groundOf = (tailOf: (s: number) => number, more: Partial<typeof moments> = {}) => {
    const seen = trace(flown(tailOf));
    return groundLoadAt(seen.recording, seen.trace, { ...moments, ...more }, seen.tail);
  };
  const taxiOf = (tailOf: (s: number) => number) => {
    const seen = trace(flown(tailOf));
    return taxiLoadAt(seen.trace, moments, seen.tail);
  };

  it("at the same speed the load comes back to what it was on the ground before", () => {
    expect(groundOf((s) => (s < 72 ? 40 : 90))).toBe(72);
    expect(groundOf((s) => (s < 72 || (s > 76 && s < 77) ? 40 : 90))).toBe(72);
  });

  it("that never comes back leaves the roll-out before the end, one that never left says nothing", () => {
    // 3 s of roll-out, 1.5 s of it before the load shows it.
    expect(groundOf(() => 40)).toBe(END_S - 1.5);
    expect(groundOf(() => 90)).toBeNull();
  });

  it("without a taxi before the flight it is where the load steps up by a third or more, if it does", () => {
    const atOnce = { startS: 10 };
    expect(groundOf((s) => (s < 72 ? 40 : 90), atOnce)).toBe(72);
    expect(groundOf((s) => (s < 72 ? 40 : 45), atOnce)).toBeNull();
    expect(groundOf((s) => (s < 72 ? 90 : 40), atOnce)).toBeNull();
  });

  it("is not read where the shaft stands", () => {
    const still = trace(
      flown(() => 40),
      (s) => (s < 50 ? 3000 : 0),
    );
    expect(groundLoadAt(still.recording, still.trace, moments, still.tail)).toBeNull();
    const bare = recordingOf({
      timeS: still.trace.timeS,
      channels: new Map([["current", still.trace.timeS]]),
    });
    expect(groundLoadAt(bare, still.trace, moments, still.tail)).toBeNull();
  });

  it("by the load alone it is where taxiing begins after an approach well below it", () => {
    expect(taxiOf((s) => (s < 70 ? 20 : 95))).toBe(70);
    expect(taxiOf((s) => (s < 52 ? 200 : s < 70 ? 20 : 95))).toBe(70);
  });

  it("where taxiing in takes less than taxiing out, it is the step up, else the end less the roll-out", () => {
    expect(taxiOf((s) => (s < 70 ? 10 : 25))).toBe(70);
    expect(taxiOf(() => 20)).toBe(END_S - 3);
  });

  it("is not told where the approach is as loud as the taxi, or comes too late", () => {
    expect(taxiOf(() => 95)).toBeNull();
    expect(taxiOf((s) => (s < 75 ? 95 : 20))).toBeNull();
  });
});

describe("a hole of unknown length", () => {
  const row = (s: number) => s * 5;
  it("is not bridged, one of known length is", () => {
    const log = (jumpsAtS: readonly number[]) => {
      const flight = syntheticRecording([REST, FLIGHT, REST], ["packVoltage", "current"]);
      const current = flight.channels.get("current")!.map((amps, at) => (at > row(60) && at < row(70) ? NONE : amps)); // biome-ignore format: one line
      const channels = new Map([...flight.channels, ["current", current]] as const);
      return analyseRecording(recordingOf({ timeS: flight.timeS, channels, jumpsAtS }), NO_FACTS, DAY);
    };
    const [known, ...others] = log([]);
    expect(others).toEqual([]);
    const mah = (seconds: number) => (30 * seconds) / 3.6;
    expect(known!.measures.chargeUsedMah.value! - known!.measures.chargeCoveredMah.value!).toBeCloseTo(
      mah(10),
      6,
    );
    for (const { measures } of log([65])) {
      expect(measures.chargeUsedMah.value! - measures.chargeCoveredMah.value!).toBeCloseTo(0, 6);
    }
  });
});
