import { describe, expect, it } from "vitest";
import { type Facts, NO_FACTS } from "../../../src/aircraft/facts.ts";
import { isKnown, type KnownQuantity, type Quantity } from "../../../src/base/quantity/index.ts";
import {
  type Change,
  type KnownParts,
  type KnownValue,
  NOTHING_KNOWN,
  PLAN_MEASURES,
  type PlanMeasure,
  predictPlan,
  predictSwap,
} from "../../../src/flight/prediction/index.ts";
import {
  MOTOR_NOT_GIVEN,
  NO_CAPACITY,
  NO_CELLS,
  NO_HEATING,
  NO_MASS,
  NO_PROPELLER_SIZE,
  NOT_CARRIED_OVER,
  reachesNought,
} from "../../../src/flight/prediction/sentences.ts";
import { ternWith } from "./demoSeason.ts";

const { facts } = ternWith("18x10");
const CONDITIONS = { ambientC: 15, elevationM: null, reservePct: 25 };
const NO_CHANGE = { diameterIn: null, pitchIn: null, blades: null, cells: null, capacityMah: null };

const planned = (changed: Facts, known: KnownParts = NOTHING_KNOWN, conditions = CONDITIONS) =>
  predictPlan(changed, known, conditions).measures;

function whole(quantity: Quantity): KnownQuantity & { readonly low: number; readonly high: number } {
  if (!isKnown(quantity) || quantity.low === null || quantity.high === null) throw new Error("not known");
  return { ...quantity, low: quantity.low, high: quantity.high };
}

const value = (quantity: Quantity) => whole(quantity).value;

function known(number: number, halfWidth: number): KnownValue {
  return {
    value: number,
    low: number - halfWidth,
    high: number + halfWidth,
    flights: 3,
    basis: "measured in 3 flights",
  };
}

describe("a plan", () => {
  it("gives every measure, predicted, in its unit, inside its interval", () => {
    for (const name of PLAN_MEASURES.filter((one) => one !== "controllerHotDayPeakC")) {
      const { value: middle, low, high, basis } = whole(planned(facts)[name]);
      expect(basis).toBe("predicted");
      expect(low, name).toBeLessThan(middle);
      expect(high, name).toBeGreaterThan(middle);
    }
  });

  it.each<[string, Facts, readonly PlanMeasure[], string]>([
    ["cells", { ...facts, pack: { ...facts.pack, cells: null } }, PLAN_MEASURES.slice(0, 7), NO_CELLS],
    ["capacity", { ...facts, pack: { ...facts.pack, capacityMah: null } }, ["flightTimeS"], NO_CAPACITY],
    ["mass", { ...facts, flyingMassKg: null }, ["powerLoadingWPerKg"], NO_MASS],
    [
      "pitch",
      { ...facts, propeller: { ...facts.propeller, pitchIn: null } },
      ["staticCurrentA", "minCellV", "flightTimeS"],
      NO_PROPELLER_SIZE,
    ],
    [
      "kv",
      { ...facts, motor: { ...facts.motor, kv: null } },
      ["staticCurrentA", "staticRpm", "sagPerCellV"],
      MOTOR_NOT_GIVEN,
    ],
  ])("without %s is null there and says why", (_what, changed, names, why) => {
    const measures = planned(changed);
    for (const name of names) expect(measures[name], name).toMatchObject({ value: null, why });
    const others = PLAN_MEASURES.filter(
      (name) => name === "staticPowerW" && !names.includes("staticCurrentA"),
    );
    for (const name of others) if (names.length === 1) expect(isKnown(measures[name]), name).toBe(true);
  });

  it("knows no heating without a log and nothing of an aircraft nobody described", () => {
    expect(planned(facts).controllerHotDayPeakC).toMatchObject({ value: null, why: NO_HEATING });
    for (const name of PLAN_MEASURES) expect(planned(NO_FACTS)[name].value).toBeNull();
  });

  it("follows the physics: more cells, thinner air, a later reserve, a colder day", () => {
    const base = planned(facts);
    const cells = planned({ ...facts, pack: { ...facts.pack, cells: 9 } });
    expect(value(cells.staticRpm)).toBeGreaterThan(value(base.staticRpm));
    expect(value(cells.staticCurrentA)).toBeGreaterThan(value(base.staticCurrentA));
    const high = planned(facts, NOTHING_KNOWN, { ...CONDITIONS, elevationM: 2000 } as never);
    expect(value(high.staticCurrentA)).toBeLessThan(value(base.staticCurrentA));
    expect(value(high.staticRpm)).toBeGreaterThan(value(base.staticRpm));
    const lean = planned(facts, NOTHING_KNOWN, { ...CONDITIONS, reservePct: 10 });
    expect(value(lean.flightTimeS)).toBeGreaterThan(value(base.flightTimeS));
    expect(value(lean.minCellV)).toBeLessThan(value(base.minCellV));
    const cold = planned(facts, NOTHING_KNOWN, { ...CONDITIONS, ambientC: -10 });
    expect(value(cold.staticCurrentA)).toBeGreaterThan(value(base.staticCurrentA));
  });

  it("shares the load among motors: two of half the size make the same pack current each", () => {
    const two = planned({
      ...facts,
      motor: { ...facts.motor, count: 2 },
      pack: { ...facts.pack, resistanceMohm: 20 },
    });
    expect(value(two.staticCurrentA) / value(planned(facts).staticCurrentA)).toBeCloseTo(2, 1);
    expect(value(two.staticRpm)).toBeCloseTo(value(planned(facts).staticRpm), -1);
  });

  it("keeps a one-sided doubt one-sided: a stated pack resistance is more likely too low", () => {
    const { value: middle, low, high } = whole(planned(facts).sagPerCellV);
    expect(high - middle).toBeGreaterThan(1.2 * (middle - low));
  });

  it("names the part whose interval is too open for the ends of an answer", () => {
    const openPack = { cells: 8, capacityMah: 5000, resistance10sMohm: known(210, 220), startCellV: null };
    const { measures } = predictPlan(facts, { ...NOTHING_KNOWN, pack: openPack }, CONDITIONS);
    expect(measures.staticCurrentA).toMatchObject({
      value: null,
      why: reachesNought("the pack resistance", openPack.resistance10sMohm.basis),
    });
  });

  it("takes measured parts before published ranges, and says how many flights they rest on", () => {
    const flown: KnownParts = {
      ...NOTHING_KNOWN,
      kv: known(228, 3),
      flown: [
        {
          shape: { diameterIn: 18, pitchIn: 10, blades: 2, family: "thin electric" },
          flights: 3,
          powerCoefficient: known(0.046, 0.001),
          staticCurrentA: known(55, 1),
          cruiseShare: known(0.45, 0.03),
          controllerRiseC: known(50, 5),
        },
      ],
    };
    const { measures, basisOf } = predictPlan(facts, flown, CONDITIONS);
    const wide = whole(planned(facts).staticCurrentA);
    const narrow = whole(measures.staticCurrentA);
    expect(narrow.high - narrow.low).toBeLessThan((wide.high - wide.low) / 2);
    expect(value(measures.meanCurrentA) / narrow.value).toBeCloseTo(0.45, 10);
    expect(value(measures.controllerHotDayPeakC)).toBeCloseTo(facts.field.hotDayC + 50, 10);
    expect(basisOf).toMatchObject({
      propellerPowerCoefficient: "measured in 3 flights",
      kv: "measured in 3 flights",
      cruiseShare: "measured in 3 flights",
      packResistanceMohm: "aircraft file",
    });
  });
});

describe("a swap", () => {
  const both = { before: CONDITIONS, after: CONDITIONS };

  it("of nothing changes nothing", () => {
    const { before, after } = predictSwap(facts, NOTHING_KNOWN, both, NO_CHANGE);
    expect(after.measures).toEqual(before.measures);
  });

  it("scales a stated pack resistance with cells and capacity", () => {
    const { facts: changed } = predictSwap(facts, NOTHING_KNOWN, both, {
      ...NO_CHANGE,
      cells: 6,
      capacityMah: 10_000,
    });
    expect(changed.pack.resistanceMohm).toBeCloseTo((40 * 6) / 8 / 2, 10);
  });

  it("carries no heating over without the facts that settle the load", () => {
    const shape = { diameterIn: 18, pitchIn: 10, blades: 2, family: null };
    const nothing = { powerCoefficient: null, staticCurrentA: null, cruiseShare: null };
    const flown = [{ shape, flights: 3, ...nothing, controllerRiseC: known(50, 5) }];
    const bare = { ...facts, motor: { ...facts.motor, kv: null } };
    const heated: KnownParts = { ...NOTHING_KNOWN, flown };
    const { before, after } = predictSwap(bare, heated, both, { ...NO_CHANGE, pitchIn: 12 });
    expect(value(before.measures.controllerHotDayPeakC)).toBe(facts.field.hotDayC + 50);
    expect(after.measures.controllerHotDayPeakC).toMatchObject({ value: null, why: NOT_CARRIED_OVER });
  });

  it("heats by the load of the changed fitting, and not at all where that load is not known", () => {
    const shape = { diameterIn: 18, pitchIn: 10, blades: 2, family: null };
    const measured = { powerCoefficient: null, staticCurrentA: known(55, 2), cruiseShare: known(0.45, 0.03) };
    const pack = { cells: 8, capacityMah: 5000, resistance10sMohm: null, startCellV: null };
    const flown = [{ shape, flights: 3, ...measured, controllerRiseC: known(50, 5) }];
    const heated: KnownParts = { ...NOTHING_KNOWN, pack, flown };
    const peakAfter = (of: Facts, change: Partial<Change>) =>
      predictSwap(of, heated, both, { ...NO_CHANGE, ...change }).after.measures.controllerHotDayPeakC;
    const before = facts.field.hotDayC + 50;
    expect(value(peakAfter(facts, { diameterIn: 22, pitchIn: 14 }))).toBeGreaterThan(before + 20);
    expect(value(peakAfter(facts, { diameterIn: 15, pitchIn: 8 }))).toBeLessThan(before - 10);
    expect(Math.abs(value(peakAfter(facts, { cells: 6 })) - before)).toBeGreaterThan(2);
    const bare = { ...facts, motor: { ...facts.motor, windingOhm: null } };
    for (const change of [{ diameterIn: 22, pitchIn: 14 }, { cells: 6 }]) {
      expect(peakAfter(bare, change)).toMatchObject({ value: null, why: NOT_CARRIED_OVER });
    }
  });

  it("names the missing motor, not a stuck one, where a fitted rise has no load to go with", () => {
    const controller = {
      risePerA2: known(0.02, 0.002),
      timeConstantS: null,
      driver: "motorCurrent" as const,
    };
    const bare = { ...facts, motor: { ...facts.motor, windingOhm: null } };
    expect(planned(bare, { ...NOTHING_KNOWN, controller }).controllerHotDayPeakC).toMatchObject({
      value: null,
      why: MOTOR_NOT_GIVEN,
    });
  });

  it("says what widens: a shape outside the published ones, blades by a rule of the trade", () => {
    const { extrapolation } = predictSwap(facts, NOTHING_KNOWN, both, {
      ...NO_CHANGE,
      diameterIn: 26,
      blades: 3,
    });
    expect(extrapolation.join("; ")).toMatch(/diameter in inches 26 lies outside.*3 blades/);
  });
});
