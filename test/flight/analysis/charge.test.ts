import { describe, expect, test } from "vitest";
import { type Facts, NO_FACTS } from "../../../src/aircraft/facts.ts";
import type { KnownQuantity, Quantity } from "../../../src/base/quantity/index.ts";
import { chargeBetween, coveredCharge, usedCharge } from "../../../src/flight/analysis/charge.ts";
import { coveredEnergy, usedEnergy } from "../../../src/flight/analysis/energy.ts";
import { type Recording, recordLog } from "../../../src/log/recording/index.ts";
import { seededRandom } from "../../generator/index.ts";
import { readLogOf, UNCORRECTED } from "../../support/readLogOf.ts";

const WHOLE = { startsUnderPower: false, endsUnderPower: false };
const EXACT: Facts = {
  ...NO_FACTS,
  sensors: { ...NO_FACTS.sensors, currentAccuracyPct: 0, voltageAccuracyPct: 0 },
};

function known(quantity: Quantity): KnownQuantity {
  if (quantity.value === null) throw new Error(quantity.why);
  return quantity;
}

function record(timeS: ArrayLike<number>, current: ArrayLike<number>, volts?: ArrayLike<number>): Recording {
  const channels = volts === undefined ? { current } : { current, packVoltage: volts };
  return recordLog(readLogOf({ timeS, channels }), UNCORRECTED);
}

const all = (recording: Recording) => ({ firstRow: 0, lastRow: recording.rows - 1 });
const every = (stepS: number, rows: number) => Array.from({ length: rows }, (_, row) => row * stepS);
/** 24 V that move in the ninth digit only: volts that never move under load are a dead sensor. */
const alive = (rows: number) => every(1, rows).map((row) => 24 + (row % 2) / 1e9);
/** 0 to 40 A, smooth, 0 at both ends. */
const swing = (rows: number) =>
  every(1, rows).map((row) => 20 - 20 * Math.cos((2 * Math.PI * row) / (rows - 1)));

describe("the short irregular log", () => {
  // Own example: t 0 1 2 4 5 9 10 s; sums by hand. The step from 5 to 9 s is bridged (limit: 5 median steps).
  const recording = record(
    [0, 1, 2, 4, 5, 9, 10],
    [0, 20, 40, 40, 60, 10, 0],
    [25.2, 24.9, 24.4, 24.3, 23.8, 24.6, 25],
  );

  test("87.5 mAh and 2.1125 Wh", () => {
    expect(coveredCharge(recording, all(recording), NO_FACTS).value).toBeCloseTo(87.5, 10);
    expect(coveredEnergy(recording, all(recording), NO_FACTS).value).toBeCloseTo(2.1125, 10);
  });

  test("with no hole and no offset what is used is what is covered", () => {
    const covered = known(coveredCharge(recording, all(recording), NO_FACTS));
    expect(usedCharge(recording, all(recording), NO_FACTS, WHOLE)).toEqual(covered);
    expect(covered).toMatchObject({ unit: "mAh", basis: "measured" });
  });
});

describe("the interval", () => {
  const recording = record(every(0.2, 501), swing(501), alive(every(0.2, 501).length));

  test("of charge holds the gain of the current sensor", () => {
    const charge = known(coveredCharge(recording, all(recording), NO_FACTS));
    expect(charge.high! - charge.value).toBeCloseTo(0.05 * charge.value, 1);
    expect(charge.value - charge.low!).toBeCloseTo(charge.high! - charge.value, 9);
  });

  test("of energy holds both gains, each one constant over the flight", () => {
    const energy = known(coveredEnergy(recording, all(recording), NO_FACTS));
    expect((energy.high! - energy.value) / energy.value).toBeCloseTo(Math.hypot(0.05, 0.01), 3);
  });

  test("of sampling is 2 sqrt(sum (change x step)^2 / 12)", () => {
    const steps = record([0, 1, 2, 3], [0.1, 30.2, 3.17, 60.07]);
    const charge = known(coveredCharge(steps, all(steps), EXACT));
    const changes = [30.1, 27.03, 56.9];
    const halfWidth = 2 * Math.sqrt(changes.reduce((sum, change) => sum + change ** 2, 0) / 12);
    // The smallest step, 27.03 A, also counts as the sensor's resolution here.
    const resolution = 2 * Math.sqrt((3 * 27.03 ** 2) / 12);
    expect((charge.high! - charge.value) * 3.6).toBeCloseTo(Math.hypot(halfWidth, resolution), 6);
  });

  test("covers an exact sine sampled coarsely, in at least 90 % of phases", () => {
    const random = seededRandom(20);
    let covered = 0;
    for (let run = 0; run < 200; run++) {
      const phase = random.between(0, 2 * Math.PI);
      const periodS = random.between(3, 30);
      const omega = (2 * Math.PI) / periodS;
      const timeS = every(1, 121);
      const log = record(
        timeS,
        timeS.map((time) => 30 + 20 * Math.sin(omega * time + phase)),
      );
      const truth = (30 * 120 + (20 / omega) * (Math.cos(phase) - Math.cos(omega * 120 + phase))) / 3.6;
      const charge = known(usedCharge(log, all(log), EXACT, WHOLE));
      if (charge.low! <= truth && truth <= charge.high!) covered++;
    }
    expect(covered).toBeGreaterThanOrEqual(180);
  });

  test("of a sensor in 5 A steps covers the true charge", () => {
    const truth = swing(501);
    const coarse = truth.map((amps) => Math.round(amps / 5) * 5);
    const log = record(every(0.2, 501), coarse);
    const exact = record(every(0.2, 501), truth);
    const charge = known(coveredCharge(log, all(log), EXACT));
    const wanted = coveredCharge(exact, all(exact), EXACT).value!;
    expect(charge.low!).toBeLessThanOrEqual(wanted);
    expect(charge.high!).toBeGreaterThanOrEqual(wanted);
    expect(charge.high! - charge.low!).toBeLessThan(0.2 * wanted);
  });
});

describe("a hole", () => {
  const timeS = every(0.2, 501);
  const inHole = (time: number, lengthS: number) => time > 15 && time < 15 + lengthS;
  function withHole(lengthS: number, amps = swing(501)) {
    const kept = timeS.flatMap((time, row) => (inHole(time, lengthS) ? [] : [row]));
    return record(
      kept.map((row) => timeS[row]!),
      kept.map((row) => amps[row]!),
      alive(kept.length),
    );
  }

  test("is left out of the covered sum and estimated in the used one", () => {
    const recording = withHole(20);
    const whole = record(timeS, swing(501));
    const covered = known(coveredCharge(recording, all(recording), EXACT));
    const used = known(usedCharge(recording, all(recording), EXACT, WHOLE));
    const truth = coveredCharge(whole, all(whole), EXACT).value!;
    expect(used).toMatchObject({ basis: "estimated", bound: "interval" });
    expect(used.why).toContain("holes are estimated");
    expect(used.low!).toBeLessThanOrEqual(covered.value);
    expect(used.low!).toBeGreaterThan(0.98 * covered.value);
    const [hole] = recording.holes;
    const most = covered.value + ((hole!.endS - hole!.startS) * 40) / 3.6;
    expect(used.high!).toBeGreaterThan(truth);
    expect(used.high!).toBeLessThan(1.01 * most);
    const energy = known(usedEnergy(recording, all(recording), EXACT, WHOLE));
    expect(energy.value / used.value).toBeCloseTo(24 / 1000, 8);
  });

  test("is as the straight line between its edges", () => {
    const line = timeS.map((time) => 0.3 * time + 1);
    const recording = withHole(30, line);
    const used = usedCharge(recording, all(recording), EXACT, WHOLE);
    expect(used.value).toBeCloseTo((0.15 * 100 ** 2 + 100) / 3.6, 9);
  });

  test("of more than a minute gives a lower bound without it", () => {
    const long = every(0.2, 1001);
    const kept = long.filter((time) => time < 40 || time > 101);
    const recording = record(
      kept,
      kept.map(() => 10),
    );
    const used = known(usedCharge(recording, all(recording), EXACT, WHOLE));
    expect(used).toMatchObject({ bound: "atLeast", high: null });
    expect(used.value).toBeCloseTo((10 * (39.8 + 98.8)) / 3.6, 6);
  });

  test("of unknown length gives a lower bound without it", () => {
    const kept = every(0.2, 400).map((time, row) => (row < 200 ? time : time + 7200));
    const recording = record(
      kept,
      kept.map(() => 10),
    );
    const used = known(usedCharge(recording, all(recording), EXACT, WHOLE));
    expect(used).toMatchObject({ bound: "atLeast", high: null });
    expect(used.value).toBeCloseTo((10 * (39.8 + 39.8)) / 3.6, 6);
  });

  test("energy never rises by a hole", () => {
    const whole = record(timeS, swing(501), alive(timeS.length));
    const energy = coveredEnergy(whole, all(whole), EXACT).value!;
    for (const lengthS of [3, 10, 30, 55]) {
      const recording = withHole(lengthS);
      expect(coveredEnergy(recording, all(recording), EXACT).value!).toBeLessThan(energy);
    }
  });
});

describe("bounds", () => {
  const recording = record(every(0.2, 501), swing(501));

  test.each([
    { startsUnderPower: true, endsUnderPower: false },
    { startsUnderPower: false, endsUnderPower: true },
  ])("%j makes a lower bound", (power) => {
    const used = known(usedCharge(recording, all(recording), NO_FACTS, power));
    expect(used).toMatchObject({ bound: "atLeast", high: null });
    expect(used.why).toContain("under power");
    expect(used.low!).toBeLessThan(used.value);
  });

  test("current that is missing at an end makes a lower bound", () => {
    const amps = swing(501).map((value, row) => (row > 480 ? Number.NaN : value));
    const log = record(every(0.2, 501), amps, alive(every(0.2, 501).length));
    expect(usedCharge(log, all(log), NO_FACTS, WHOLE)).toMatchObject({ bound: "atLeast" });
  });
});

describe("a negative reading at rest", () => {
  const rest = every(0.2, 801).map((time, row) => (time < 50 ? 0 : swing(801)[row]!));
  const shifted = record(
    every(0.2, 801),
    rest.map((amps) => amps - 0.8),
    alive(rest.length),
  );
  const plain = record(every(0.2, 801), rest, alive(rest.length));

  test("is lifted to zero in what is used, not in what is covered", () => {
    const truth = coveredCharge(plain, all(plain), EXACT).value!;
    expect(coveredCharge(shifted, all(shifted), EXACT).value!).toBeCloseTo(truth - (0.8 * 160) / 3.6, 6);
    const used = known(usedCharge(shifted, all(shifted), EXACT, WHOLE));
    expect(used.value).toBeCloseTo(truth, 6);
    expect(used).toMatchObject({ basis: "derived" });
    expect(usedEnergy(shifted, all(shifted), EXACT, WHOLE).value!).toBeCloseTo((truth * 24) / 1000, 6);
  });

  test("may hide up to one ampere of idle: in the upper end only", () => {
    const used = known(usedCharge(shifted, all(shifted), EXACT, WHOLE));
    const below = used.value - used.low!;
    expect(used.high! - used.value - below).toBeCloseTo(160 / 3.6, 6);
  });

  test("a positive one is load", () => {
    const loaded = record(
      every(0.2, 801),
      rest.map((amps) => amps + 0.6),
    );
    const used = usedCharge(loaded, all(loaded), EXACT, WHOLE);
    expect(used).toEqual(coveredCharge(loaded, all(loaded), EXACT));
  });
});

describe("charge between two times", () => {
  const amps = every(0.2, 501).map((time) => 0.5 * time + 3);
  const recording = record(every(0.2, 501), amps);

  test("cuts the steps at both ends exactly", () => {
    const charge = chargeBetween(recording, 10.07, 80.43, EXACT);
    const exact = (0.25 * (80.43 ** 2 - 10.07 ** 2) + 3 * (80.43 - 10.07)) / 3.6;
    expect(charge.value).toBeCloseTo(exact, 9);
  });

  test("over the whole log is the whole charge", () => {
    const whole = coveredCharge(recording, all(recording), EXACT).value!;
    expect(chargeBetween(recording, 0, 100, EXACT).value).toBeCloseTo(whole, 9);
    expect(chargeBetween(recording, -5, 105, EXACT).value).toBeCloseTo(whole, 9);
  });

  test.each([1, 2, 3, 4, 5])("parts add up (seed %i)", (seed) => {
    const random = seededRandom(seed);
    const cut = random.between(1, 99);
    const parts =
      chargeBetween(recording, 0, cut, EXACT).value! + chargeBetween(recording, cut, 100, EXACT).value!;
    expect(parts).toBeCloseTo(chargeBetween(recording, 0, 100, EXACT).value!, 9);
  });
});

describe("what cannot be summed says why", () => {
  test("no current, no volts, a dead sensor, too few rows", () => {
    const volts = recordLog(
      readLogOf({ timeS: [0, 1, 2], channels: { packVoltage: [25, 25, 25] } }),
      UNCORRECTED,
    );
    expect(coveredCharge(volts, all(volts), NO_FACTS)).toMatchObject({ value: null, unit: "mAh" });
    const amps = record(every(0.2, 50), swing(50));
    expect(coveredEnergy(amps, all(amps), NO_FACTS)).toMatchObject({ value: null, unit: "Wh" });
    const one = record([0], [5]);
    expect(usedCharge(one, all(one), NO_FACTS, WHOLE)).toMatchObject({ value: null });
    const dead = recordLog(
      readLogOf({
        timeS: every(0.2, 100),
        channels: { current: every(0, 100), shaftSpeed: every(100, 100) },
      }),
      UNCORRECTED,
    );
    const charge = usedCharge(dead, all(dead), NO_FACTS, WHOLE);
    expect(charge.value).toBeNull();
    expect(charge.why).toContain("dead");
  });
});

describe("the same flight in other clothes", () => {
  test.each([31, 32, 33, 34])("gives the same sums (seed %i)", (seed) => {
    const random = seededRandom(seed);
    const timeS: number[] = [0];
    for (let row = 1; row < 400; row++) timeS.push(timeS[row - 1]! + random.between(0.1, 0.3));
    const amps = timeS.map((time) => 20 + 15 * Math.sin(time / 5) + random.normal());
    const volts = amps.map((value) => 25 - 0.03 * value);
    const plain = record(timeS, amps, volts);
    const charge = coveredCharge(plain, all(plain), EXACT).value!;
    const energy = coveredEnergy(plain, all(plain), EXACT).value!;
    const later = record(
      timeS.map((time) => time + 1234.5),
      amps,
      volts,
    );
    expect(coveredCharge(later, all(later), EXACT).value! / charge).toBeCloseTo(1, 9);
    const twice = (values: readonly number[]) => values.flatMap((value) => [value, value]);
    const doubled = record(twice(timeS), twice(amps), twice(volts));
    expect(doubled.rowsUsed).toBe(plain.rowsUsed);
    expect(coveredEnergy(doubled, all(doubled), EXACT).value! / energy).toBeCloseTo(1, 9);
    const cut = random.whole(50, 350);
    const first = coveredCharge(plain, { firstRow: 0, lastRow: cut }, EXACT).value!;
    const second = coveredCharge(plain, { firstRow: cut, lastRow: 399 }, EXACT).value!;
    expect((first + second) / charge).toBeCloseTo(1, 9);
    const scaled = recordLog(readLogOf({ timeS, channels: { current: amps, packVoltage: volts } }), {
      currentScale: 1.04,
      rpmDivisor: 1,
    });
    expect(coveredCharge(scaled, all(scaled), EXACT).value! / charge).toBeCloseTo(1.04, 9);
  });
});
