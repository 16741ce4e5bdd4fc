import { describe, expect, it } from "vitest";
import { NO_FACTS } from "../../../src/aircraft/facts.ts";
import { known, type Quantity } from "../../../src/base/quantity/index.ts";
import { fittedPropeller, flownPropeller, setTimer, timerResult } from "../../../src/season/timer/index.ts";
import {
  NO_CONTROLLER_LIMIT,
  NO_HEATING,
  NO_LOADED_CELL_LIMIT,
  NO_PACK_RESISTANCE,
  noLoadLeftOut,
  otherCellsLeftOut,
} from "../../../src/season/timer/sentences.ts";
import { type EntryChanges, entry, FITTED, NEXT, sure, three } from "./entries.ts";

function limitOf(
  by: "voltage" | "temperature",
  changes: EntryChanges,
  fitted = FITTED,
  ambientC: number | null = null,
) {
  const { limits } = setTimer(three(changes), fitted, { ...NEXT, ambientC }, null);
  return limits.find((limit) => limit.by === by)!;
}

const openEnded = (value: number, unit: string): Quantity => ({
  value,
  low: null,
  high: null,
  unit,
  basis: "derived",
  bound: "atLeast",
});

describe("a limit that cannot be reckoned says what is missing", () => {
  it("in the aircraft file", () => {
    const noCellLimit = { ...FITTED, pack: { ...FITTED.pack, minLoadedCellV: null } };
    const noCells = { ...FITTED, pack: { ...FITTED.pack, cells: null } };
    const noControllerLimit = { ...FITTED, controller: { ...FITTED.controller, limitC: null } };
    expect(limitOf("voltage", {}, noCellLimit).why).toContain(NO_LOADED_CELL_LIMIT);
    expect(limitOf("voltage", { facts: noCells }, noCells).why).toContain(NO_LOADED_CELL_LIMIT);
    expect(limitOf("temperature", {}, noControllerLimit).why).toContain(NO_CONTROLLER_LIMIT);
  });

  it("in the flights", () => {
    expect(limitOf("voltage", {}).why).toContain(NO_PACK_RESISTANCE);
    expect(limitOf("temperature", {}).why).toContain(NO_HEATING);
    const below = { controllerHotDayPeakC: sure(99.9, "degC") };
    expect(limitOf("temperature", { measures: below }).why).toContain(NO_HEATING);
    const at = { controllerHotDayPeakC: sure(100, "degC") };
    expect(limitOf("temperature", { measures: at }).why).toContain("flight-1");
  });

  it.each([
    "controllerRisePerA2",
    "controllerTimeConstantS",
    "controllerHotDayPeakC",
    "flightTimeS",
  ] as const)("where a flight lacks its %s", (missing) => {
    const all = {
      controllerRisePerA2: sure(0.08, "degC/A2"),
      controllerTimeConstantS: sure(120, "s"),
      controllerHotDayPeakC: sure(90, "degC"),
    };
    const measures = { ...all, [missing]: { value: null, unit: "", why: "not logged" } as Quantity };
    expect(limitOf("temperature", { measures, load: { meanDriverA2: 800 } }).why).toContain(NO_HEATING);
  });
});

describe("the controller in other air", () => {
  const hot = (peak: Quantity): EntryChanges => ({
    measures: {
      controllerRisePerA2: openEnded(0.08, "degC/A2"),
      controllerTimeConstantS: sure(120, "s"),
      controllerHotDayPeakC: peak,
    },
    load: { meanDriverA2: 800 },
  });

  it("takes a value without ends as it stands", () => {
    const withEnds = limitOf("temperature", hot(sure(96, "degC")), FITTED, 35);
    expect(limitOf("temperature", hot(openEnded(96, "degC")), FITTED, 35)).toEqual(withEnds);
  });

  it("follows colder air one for one and hotter air by a little more", () => {
    // Peak 90 at 35 degC: growth 55 * 0.005 = 0.275, so 40 degC adds 5 / 0.725 = 6.897 and 30 degC takes 5.
    const tooHot = (ambientC: number, limitC: number) => {
      const fitted = { ...FITTED, controller: { ...FITTED.controller, limitC } };
      const measures = { controllerHotDayPeakC: sure(90, "degC") };
      return limitOf("temperature", { measures }, fitted, ambientC).why?.includes("flight-1");
    };
    expect([tooHot(40, 96.89), tooHot(40, 96.9)]).toEqual([true, false]);
    expect([tooHot(30, 85), tooHot(30, 85.01)]).toEqual([true, false]);
  });
});

describe("the pack in other air", () => {
  const resistance = { packResistance10sMohm: known(60, 2, "mohm", "derived") };
  const why = (givenC: number | null, nextC: number | null) =>
    limitOf("voltage", { measures: resistance, given: { ambientC: givenC } }, FITTED, nextC).why ?? "";

  it("is called colder from 4 degC on, and only where both are known", () => {
    expect(why(20, 15.9)).toContain("colder");
    expect(why(20, 16)).not.toContain("colder");
    expect(why(null, 0)).not.toContain("colder");
    expect(why(20, null)).not.toContain("colder");
  });

  it("takes a resistance without an upper end as it stands", () => {
    const bare = { packResistance10sMohm: openEnded(78, "mohm") };
    const sharp = { packResistance10sMohm: sure(78, "mohm") };
    expect(limitOf("voltage", { measures: bare })).toEqual(limitOf("voltage", { measures: sharp }));
  });
});

describe("which flights count, at the edges", () => {
  const whyOf = (changes: EntryChanges, fitted = FITTED) =>
    setTimer([...three(), entry({ ...changes, flight: "odd" })], fitted, NEXT, null).leftOut.find(
      ({ flight }) => flight === "odd",
    )?.why;

  it("a load that stands still says nothing", () => {
    expect(whyOf({ load: { rateMahPerS: 0 } })).toBe(noLoadLeftOut());
    expect(whyOf({ load: { rateMahPerS: Number.NaN } })).toBe(noLoadLeftOut());
  });

  it("a charge of nothing is doubtful", () => {
    expect(whyOf({ measures: { chargeUsedMah: known(0, 0, "mAh", "measured") } })).toBeDefined();
  });

  it("an unknown cell count is another one", () => {
    const unknownCells = { ...FITTED, pack: { ...FITTED.pack, cells: null } };
    expect(whyOf({ facts: unknownCells })).toBe(otherCellsLeftOut(null, 8));
    expect(otherCellsLeftOut(8, null)).toContain("unknown");
  });

  it("a pack whose size nobody said is taken for the fitted one", () => {
    expect(whyOf({ facts: { ...FITTED, pack: { ...FITTED.pack, capacityMah: null } } })).toBeUndefined();
  });

  it.each([15, 150, 420, 600, 3600])(
    "a watch that shows %d s of a flight of six minutes is not believed",
    (flownS) => {
      const { timerS, leftOut } = setTimer(three({ given: { flownS } }), FITTED, NEXT, null);
      expect(timerS).toBeNull();
      expect(leftOut).toHaveLength(3);
      expect(leftOut[0]?.why).toMatch(
        /^its stated flown time, \d+:\d\d, does not fit the \d:\d\d of its log/,
      );
    },
  );
});

describe("names of propellers", () => {
  const flown = (propeller: string | null, blades = 2) =>
    flownPropeller(
      entry({ given: { propeller }, facts: { ...FITTED, propeller: { ...FITTED.propeller, blades } } }),
    );

  it.each([
    ["18x10", 2, "18x10"],
    ["18,5 x 10", 2, "18.5x10"],
    ["18x10", 3, "18x10x3"],
    ["18x10x4", 2, "18x10x4"],
    ["18×10*2", 3, "18x10"],
    ["  the wooden one ", 2, "the wooden one"],
    [null, 2, "18x10"],
  ])("%j with %i blades fitted is %s", (written, blades, expected) => {
    expect(flown(written, blades)).toBe(expected);
  });

  it("are unknown where nobody said", () => {
    expect(fittedPropeller(NO_FACTS)).toBeNull();
    const half = { ...NO_FACTS, propeller: { ...NO_FACTS.propeller, diameterIn: 18 } };
    expect(fittedPropeller(half)).toBeNull();
  });
});

describe("the result of the command", () => {
  it("holds the setting and what the put-backs say", () => {
    const result = timerResult(three(), FITTED, NEXT);
    expect(result).toMatchObject(setTimer(three(), FITTED, NEXT, null));
    expect(result).toHaveProperty("calibration");
  });

  it("speaks of one flight as one, and of an unnamed aircraft as such", () => {
    const one = setTimer([entry()], { ...FITTED, name: null }, NEXT, null);
    expect(one.aircraft).toBe("");
    expect(one.text).toContain("from 1 flight.");
    expect(one.text).toContain("Provisional");
    expect(setTimer(three(), FITTED, NEXT, null).text).toContain("from 3 flights.");
  });
});
