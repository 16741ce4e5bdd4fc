import { describe, expect, it } from "vitest";
import { known, unknown } from "../../../src/base/quantity/index.ts";
import { oneSidedToleranceFactor } from "../../../src/base/statistics/index.ts";
import { loadOf } from "../../../src/season/timer/countedFlights.ts";
import { peakIn } from "../../../src/season/timer/heatOfFlight.ts";
import { chargeLimit, flownPropeller, setTimer } from "../../../src/season/timer/index.ts";
import { voltageLimitS } from "../../../src/season/timer/voltageLimit.ts";
import { CONDITIONS, type EntryChanges, entry, FITTED, NEXT, sure, three } from "./entries.ts";

const LOAD = { climbS: 20, climbChargeMah: 300, rateMahPerS: 6, groundChargeMah: 100, approachS: 25, peakCurrentA: 60 }; // biome-ignore format: one flight

describe("the sum behind a timer", () => {
  it("names each term with its unit, and what is left is what they leave", () => {
    const { explained } = setTimer(three(), FITTED, { ...NEXT, startPct: 90 }, null);
    const terms = explained.map(({ what, value, unit }) => [what, Math.round(1000 * value) / 1000, unit]);
    // A go-around is 30 s at the climb's 15 mAh a second.
    expect(terms.slice(0, 7)).toEqual([
      ["pack at the start", 4500, "mAh"],
      ["reserve to land with", -1250, "mAh"],
      ["run-up, taxi and standby", -100, "mAh"],
      ["one go-around of 30 s", -450, "mAh"],
      ["take-off and climb", -300, "mAh"],
      ["left for the flight", 2400, "mAh"],
      ["typical rate after the climb", 360, "mAh/min"],
    ]);
    expect(terms[8]).toEqual(["longest approach and landing", 25, "s"]);
    expect(terms[7]![0]).toBe("rate that 19 of 20 flights stay below");
    expect(terms[7]![2]).toBe("mAh/min");
  });

  it("is cautious by the tolerance factor of the spread pooled with 20 % worth three flights", () => {
    const limit = chargeLimit([1, 2, 3].map((n) => ({ ...LOAD, flight: String(n) })), CONDITIONS); // biome-ignore format: one case
    const spread = Math.sqrt((3 * 0.2 ** 2) / 5);
    const rate = 6 * Math.exp(oneSidedToleranceFactor(3, 0.95, 0.95, 5) * spread);
    expect(limit.cautiousTouchdownByS).toBeCloseTo(20 + (limit.usableMah - 300) / rate, 6);
  });

  it("gives no timer of nothing, for any pack", () => {
    for (let capacityMah = 1200; capacityMah < 3000; capacityMah += 7) {
      const facts = { ...FITTED, pack: { ...FITTED.pack, capacityMah } };
      const { timerS, provisional } = setTimer(three({ facts }), facts, NEXT, null);
      if (timerS === null) expect(provisional).toBe(true);
      else expect(timerS).toBeGreaterThanOrEqual(10);
    }
  });
});

describe("a flight timed by the pilot's watch", () => {
  const flown = (flownS: number | null, more: EntryChanges = {}) => entry({ ...more, given: { flownS } });

  it("has its charge after the climb over its own length", () => {
    expect(loadOf(flown(null), 1)).toMatchObject(LOAD);
    expect(loadOf(flown(400), 1)?.rateMahPerS).toBeCloseTo((6 * 340) / 380, 12);
    expect(loadOf(flown(20), 1)?.rateMahPerS).toBe(6);
    expect(loadOf(flown(400, { measures: { flightTimeS: unknown("s", "none") } }), 1)?.rateMahPerS).toBe(6);
    expect(loadOf(flown(400, { measures: { flightTimeS: sure(20, "s") } }), 1)?.rateMahPerS).toBe(6);
    expect(loadOf(flown(400, { measures: { flightTimeS: sure(15, "s") } }), 1)?.rateMahPerS).toBe(6);
  });

  it("has every charge and current corrected by the sensor's gain", () => {
    const corrected = loadOf(flown(null), 1.1)!;
    expect(corrected.climbChargeMah).toBeCloseTo(330, 9);
    expect(corrected.rateMahPerS).toBeCloseTo(6.6, 9);
    expect(corrected.groundChargeMah).toBeCloseTo(110, 9);
    expect(corrected.peakCurrentA).toBeCloseTo(66, 9);
    expect(loadOf(entry({ load: null }), 1)).toBeNull();
  });

  it("may fall short of the log's interval by 30 s or 15 % and exceed it by 10 s or 10 %, by no more", () => {
    const leftOut = (flownS: number, flightS: number) => {
      const flights = three({
        given: { flownS },
        measures: { flightTimeS: known(flightS, 3, "s", "measured") },
      });
      return setTimer(flights, FITTED, NEXT, null).leftOut.length;
    };
    // 357 - 54 and 363 + 36; 97 - 30 and 103 + 10.
    expect([303, 302, 399, 400].map((flownS) => leftOut(flownS, 360))).toEqual([0, 3, 0, 3]);
    expect([67, 66, 113, 114].map((flownS) => leftOut(flownS, 100))).toEqual([0, 3, 0, 3]);
  });
});

describe("a propeller as it was written", () => {
  it.each([
    ["18x10", "18x10"],
    ["18 x 10 x 3", "18x10x3"],
    [" 18X10,5 ", "18x10.5"],
    ["my 18x10", "my 18x10"],
    ["18x10 carbon", "18x10 carbon"],
    ["18x10x33", "18x10x33"],
    ["18x10 y 3", "18x10 y 3"],
  ])("%j is %j", (propeller, name) => expect(flownPropeller(entry({ given: { propeller } }))).toBe(name));

  it("that nobody knows keeps no flight out", () => {
    const unnamed = { ...FITTED, propeller: { ...FITTED.propeller, diameterIn: null } };
    expect(setTimer(three({ facts: unnamed }), FITTED, NEXT, null).leftOut).toEqual([]);
    expect(setTimer(three(), unnamed, NEXT, null).leftOut).toEqual([]);
  });
});

describe("the volts under load", () => {
  const charge = chargeLimit([{ ...LOAD, flight: "one" }], CONDITIONS);
  const limitAt = (minLoadedCellV: number, capacityMah = 5000) =>
    voltageLimitS(charge, {
      cells: 8,
      chemistry: "lipo",
      minLoadedCellV,
      resistance10sOhm: 0.06,
      resistanceHalfWidthOhm: 0.006,
      peakCurrentA: 60,
      capacityMah,
      startShare: 1,
    });

  it("fall below their limit before the charge is gone or not at all, and sooner for a higher limit", () => {
    // Ground, go-around and climb first, then the rate that 19 of 20 flights stay below.
    const emptyS = 20 + (5000 - 100 - 450 - 300) / charge.boundRateMahPerS;
    let before = Number.POSITIVE_INFINITY;
    let latest = 0;
    for (let volts = 2; volts < 3.8; volts += 0.01) {
      const seconds = limitAt(volts) ?? Number.POSITIVE_INFINITY;
      if (Number.isFinite(seconds)) latest = Math.max(latest, seconds);
      expect(seconds).toBeLessThanOrEqual(before + 0.02);
      before = seconds;
    }
    expect(latest).toBeLessThanOrEqual(emptyS + 0.02);
    expect(latest).toBeGreaterThan(0.9 * emptyS);
    expect(limitAt(3.8)).toBe(0);
  });

  it("are those of the pack's health, and of the flights that tell a resistance", () => {
    const measures = { packResistance10sMohm: known(60, 6, "mohm", "derived") };
    const at = (healthPct: number, flights = three({ measures })) => {
      const worn = { ...FITTED, pack: { ...FITTED.pack, healthPct } };
      return setTimer(flights, worn, NEXT, null).limits.find(({ by }) => by === "voltage")!;
    };
    const [whole, worn] = [at(100), at(80)].map(({ touchdownByS }) => touchdownByS!);
    expect(worn).toBeLessThan(whole!);
    const [first, ...others] = three({ measures });
    const untold = { ...first!, check: { ...first!.check, measures: entry().check.measures } };
    expect(at(100, [untold, ...others]).touchdownByS).toBeCloseTo(whole!, 6);
  });
});

describe("a peak in other air", () => {
  it("is its upper end, one for one, and a little more where it is hotter", () => {
    const peak = known(80, 4, "degC", "predicted") as Parameters<typeof peakIn>[2];
    expect(peakIn(35, 35, peak)).toBe(84);
    expect(peakIn(15, 35, peak)).toBe(64);
    // Switch resistance grows by 0.5 % a kelvin: 45 K of rise make 10 K more of air 10 / (1 - 0.225).
    expect(peakIn(45, 35, peak)).toBeCloseTo(84 + 10 / (1 - 0.225), 9);
  });
});
