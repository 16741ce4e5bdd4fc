import { describe, expect, it } from "vitest";
import { timerLines } from "../../../src/apps/commands/logbook/timerLines.ts";
import { known, unknown } from "../../../src/base/quantity/index.ts";
import {
  CHARGE_UNLIKE_REST_VOLTS,
  CURRENT_NOT_LOGGED,
} from "../../../src/flight/analysis/currentDoubtSentences.ts";
import type { LogbookEntry } from "../../../src/season/logbook/index.ts";
import { setTimer } from "../../../src/season/timer/index.ts";
import {
  benchRunLeftOut,
  cutShortLeftOut,
  otherPropellerLeftOut,
  packTooSmall,
  reckonedFor,
} from "../../../src/season/timer/sentences.ts";
import { type EntryChanges, entry, FITTED, NEXT, sure } from "./entries.ts";

function flights(count: number, changes: EntryChanges = {}): readonly LogbookEntry[] {
  return Array.from({ length: count }, (_, index) => entry({ ...changes, flight: `flight-${index + 1}` }));
}

describe("the timer's frame", () => {
  it("has the fields that other programs rely on", () => {
    const timer = setTimer(flights(6), FITTED, { ...NEXT, pack: "A" }, null);
    expect(timer).toMatchObject({
      format: "tallywatt/timer",
      version: 1,
      aircraft: "Plover",
      pack: "A",
      flights: 6,
      binding: "charge",
      coverage: 0.95,
      reservePct: 25,
      provisional: false,
      leftOut: [],
    });
    expect(timer.limits.map(({ by }) => by)).toEqual(["charge", "voltage", "temperature"]);
    for (const limit of timer.limits) {
      if (limit.touchdownByS === null) expect(limit.why).toBeTruthy();
      else expect(Number.isInteger(limit.touchdownByS)).toBe(true);
    }
    expect(timer.why).toBeUndefined();
  });

  it("says in its text what it is and what it is not", () => {
    const { text } = setTimer(flights(3), FITTED, NEXT, null);
    expect(text).not.toMatch(/\b(safe|guarantee|OK to fly)/i);
    for (const sentence of text.split(/(?<=[.!?])\s/)) {
      expect(sentence.split(/\s+/).length, sentence).toBeLessThanOrEqual(25);
    }
  });
});

describe("from touchdown to timer", () => {
  it("takes the longest approach off and rounds down to 10 s", () => {
    const timer = setTimer([...flights(3), entry({ load: { approachS: 37.2 } })], FITTED, NEXT, null);
    const limit = timer.limits[0]?.touchdownByS ?? Number.NaN;
    expect(timer.timerS).toBe(10 * Math.floor((limit - 38) / 10));
    expect(timer.touchdownByS).toBe((timer.timerS ?? 0) + 38);
    expect(timer.touchdownByS).toBeLessThanOrEqual(limit);
  });

  it("takes 45 s or more off until three flights are known, and calls the timer provisional", () => {
    const two = setTimer(flights(2), FITTED, NEXT, null);
    expect((two.touchdownByS ?? 0) - (two.timerS ?? 0)).toBe(45);
    expect(two.provisional).toBe(true);
    const long = setTimer(flights(2, { load: { approachS: 80 } }), FITTED, NEXT, null);
    expect((long.touchdownByS ?? 0) - (long.timerS ?? 0)).toBe(80);
    const three = setTimer(flights(3), FITTED, NEXT, null);
    expect((three.touchdownByS ?? 0) - (three.timerS ?? 0)).toBe(25);
  });

  it("explains each second: the terms of the sum give the limit", () => {
    const timer = setTimer(flights(4), FITTED, NEXT, null);
    const term = (what: string) =>
      timer.explained.find((one) => one.what.startsWith(what))?.value ?? Number.NaN;
    const left = timer.explained.slice(0, 5).reduce((sum, { value }) => sum + value, 0);
    expect(left).toBeCloseTo(term("left for the flight"), 9);
    const limitS = 20 + left / (term("rate that 19 of 20") / 60);
    expect(timer.limits[0]?.touchdownByS).toBe(Math.floor(limitS));
  });

  it("gives a shorter cautious timer and says what one more flight would buy", () => {
    const timer = setTimer(flights(3), FITTED, NEXT, null);
    expect(timer.cautiousTimerS).toBeLessThan(timer.timerS ?? 0);
    const four = setTimer(flights(4), FITTED, NEXT, null);
    const gained = (four.limits[0]?.touchdownByS ?? 0) - (timer.limits[0]?.touchdownByS ?? 0);
    expect(Math.abs((timer.oneMoreFlightS ?? 0) - gained)).toBeLessThanOrEqual(1);
  });
});

describe("the next flight", () => {
  const base = setTimer(flights(3), FITTED, NEXT, null).timerS ?? 0;
  it("gets less with more reserve or a pack that is not full", () => {
    expect(setTimer(flights(3), FITTED, { ...NEXT, reservePct: 35 }, null).timerS).toBeLessThan(base);
    expect(setTimer(flights(3), FITTED, { ...NEXT, startPct: 90 }, null).timerS).toBeLessThan(base);
  });
  it("trusts the put-backs over the sensor when they are applied", () => {
    const calibration = {
      gain: 1.05,
      low: 1.03,
      high: 1.07,
      putBacks: 4,
      isApplied: true,
      isScattered: false,
      leftOut: [],
    };
    expect(setTimer(flights(3), FITTED, NEXT, calibration).timerS).toBeLessThan(base);
    const idle = { ...calibration, isApplied: false };
    expect(setTimer(flights(3), FITTED, NEXT, idle).timerS).toBe(base);
  });
  it("takes the pilot's own watch over the measured length", () => {
    // The same charge in a longer flight is a lower rate.
    expect(setTimer(flights(3, { given: { flownS: 390 } }), FITTED, NEXT, null).timerS).toBeGreaterThan(base);
  });
});

describe("which flights count", () => {
  const leftOut = (changes: EntryChanges) =>
    setTimer([...flights(3), entry({ ...changes, flight: "odd" })], FITTED, NEXT, null).leftOut;
  it("leaves out what is not like the next flight, each with its reason", () => {
    const benchRun = leftOut({ check: { kind: "benchRun" }, load: null });
    expect(benchRun).toEqual([{ flight: "odd", why: benchRunLeftOut() }]);
    expect(leftOut({ check: { complete: false } })).toEqual([{ flight: "odd", why: cutShortLeftOut() }]);
    expect(leftOut({ load: { isChargeDoubtful: true } })).toEqual([
      { flight: "odd", why: CHARGE_UNLIKE_REST_VOLTS },
    ]);
    expect(leftOut({ given: { propeller: "18x8" } })).toEqual([
      { flight: "odd", why: otherPropellerLeftOut("18x8", "18x10") },
    ]);
    const other = (pack: Partial<typeof FITTED.pack>) =>
      leftOut({ facts: { ...FITTED, pack: { ...FITTED.pack, ...pack } } });
    expect(other({ cells: 7 })).toHaveLength(1);
    expect(other({ capacityMah: 4000 })).toHaveLength(1);
    expect(leftOut({ load: null })).toHaveLength(1);
    const peakCurrentA = known(60, 18, "A", "estimated");
    expect(leftOut({ measures: { peakCurrentA } })).toEqual([{ flight: "odd", why: CURRENT_NOT_LOGGED }]);
  });
  it("leaves out a charge that is unknown, only bounded, or open through holes", () => {
    const charge = (chargeUsedMah: ReturnType<typeof known>) => leftOut({ measures: { chargeUsedMah } });
    expect(charge(unknown("mAh", "the current sensor is dead"))[0]?.why).toContain("dead");
    expect(
      charge({ value: 900, low: 900, high: null, unit: "mAh", basis: "measured", bound: "atLeast" }),
    ).toHaveLength(1);
    expect(charge(known(2440, 400, "mAh", "measured"))).toHaveLength(1);
    expect(charge(known(2440, 150, "mAh", "measured"))).toHaveLength(0);
  });
  it("counts another spelling of the propeller and another pack of the same size", () => {
    expect(leftOut({ given: { propeller: " 18 X 10.0 ", pack: "B" } })).toEqual([]);
  });
});

describe("without a timer", () => {
  it("says what is missing", () => {
    const noPack = { ...FITTED, pack: { ...FITTED.pack, capacityMah: null } };
    const cases = [
      [setTimer(flights(3), noPack, NEXT, null), "capacityMah"],
      [setTimer([], FITTED, NEXT, null), "holds no flight"],
      [setTimer([entry({ check: { complete: false } })], FITTED, NEXT, null), "none of the 1"],
      [setTimer(flights(3), FITTED, { ...NEXT, startPct: 40 }, null), "does not last"],
    ] as const;
    for (const [timer, words] of cases) {
      expect(timer.timerS).toBeNull();
      expect(timer.touchdownByS).toBeNull();
      expect(timer.cautiousTimerS).toBeNull();
      expect(timer.why).toContain(words);
      expect(timer.text).toContain(words);
    }
  });
});

describe("what the timer rests on", () => {
  const HOT = {
    controllerRisePerA2: sure(0.08, "degC/A2"),
    controllerTimeConstantS: sure(120, "s"),
    controllerHotDayPeakC: sure(96, "degC"),
  };

  it("states no negative touchdown, and names the limit that leaves no time", () => {
    const empty = setTimer(flights(3), FITTED, { ...NEXT, startPct: 20 }, null);
    expect(empty.limits[0]).toMatchObject({ by: "charge", touchdownByS: 0, why: packTooSmall() });
    expect(timerLines(empty, null).join(" ")).not.toMatch(/-\d|Touchdown by/);
    const hot = flights(3, { measures: HOT, load: { meanDriverA2: 800 } });
    const tooHot = setTimer(hot, FITTED, { ...NEXT, ambientC: 90 }, null);
    expect(tooHot.timerS).toBeNull();
    expect(tooHot.why).toContain("the controller's temperature allows a touchdown by");
  });

  it("says the air it is reckoned for and the flights that decide", () => {
    const hungry = setTimer(
      [...flights(2), entry({ flight: "hungry", load: { rateMahPerS: 7 } })],
      FITTED,
      NEXT,
      null,
    );
    expect(hungry).toMatchObject({ ambientC: FITTED.field.hotDayC, isHotDay: true, binding: "charge" });
    expect(hungry.limits[0]?.flights).toEqual(["hungry"]);
    expect(timerLines(hungry, null)).toContain(reckonedFor(FITTED.field.hotDayC, true, ["hungry"]));
    const warm = entry({ flight: "warm", measures: HOT, load: { meanDriverA2: 900 } });
    const cool = flights(2, { measures: HOT, load: { meanDriverA2: 700 } });
    const heated = setTimer([...cool, warm], FITTED, { ...NEXT, ambientC: 45 }, null);
    expect(heated).toMatchObject({ ambientC: 45, isHotDay: false, binding: "temperature" });
    expect(heated.limits[2]?.flights).toEqual(["warm"]);
    const weak = { packResistance10sMohm: known(80, 1, "mohm", "derived") };
    const sagging = [
      entry({ flight: "weak", measures: weak }),
      entry({ flight: "strong", load: { peakCurrentA: 90 } }),
    ];
    expect(setTimer(sagging, FITTED, NEXT, null).limits[1]?.flights).toEqual(["weak", "strong"]);
  });
});

describe("the other limits", () => {
  const RESISTANCE = { packResistance10sMohm: known(60, 2, "mohm", "derived") };
  it("lets the loaded cells bind when the pack is weak, of the next flight's pack where it is known", () => {
    const old = { packResistance10sMohm: known(78, 2, "mohm", "derived") };
    const weak = flights(3, { measures: old, given: { pack: "old" } });
    const fit = flights(3, {
      measures: { packResistance10sMohm: known(30, 1, "mohm", "derived") },
      given: { pack: "new" },
    });
    const onOld = setTimer([...weak, ...fit], FITTED, { ...NEXT, pack: "old" }, null);
    const onNew = setTimer([...weak, ...fit], FITTED, { ...NEXT, pack: "new" }, null);
    const onAny = setTimer([...weak, ...fit], FITTED, NEXT, null);
    expect(onOld.binding).toBe("voltage");
    expect(onNew.binding).toBe("charge");
    expect(onAny.limits[1]?.touchdownByS).toBe(onOld.limits[1]?.touchdownByS);
  });
  it("cautions when the next pack is colder than any counted one", () => {
    const warm = flights(3, { measures: RESISTANCE, given: { ambientC: 22 } });
    expect(setTimer(warm, FITTED, { ...NEXT, ambientC: 8 }, null).limits[1]?.why).toContain("colder");
    expect(setTimer(warm, FITTED, { ...NEXT, ambientC: 20 }, null).limits[1]?.why ?? "").not.toContain(
      "colder",
    );
  });

  const HEAT = {
    controllerRisePerA2: sure(0.08, "degC/A2"),
    controllerTimeConstantS: sure(120, "s"),
    controllerHotDayPeakC: sure(96, "degC"),
  };
  it.each(["packCurrent", "motorCurrent", "powerFourThirds"] as const)(
    "reckons with the driver %s and meets the flight's own hot-day peak",
    (driver) => {
      const hot = flights(3, { measures: HEAT, driver, load: { meanDriverA2: 800 } });
      const room = (limitC: number) => {
        const fitted = { ...FITTED, controller: { ...FITTED.controller, limitC } };
        return setTimer(hot, fitted, NEXT, null).limits[2];
      };
      // The flight of 360 s peaks at 96 degC: a limit there is met at its own length.
      expect(room(96)?.touchdownByS).toBe(360);
      const above = room(96.5)?.touchdownByS ?? Number.NaN;
      expect(96 + 64 * (Math.exp(-360 / 120) - Math.exp(-above / 120))).toBeCloseTo(96.5, 1);
      expect(room(110)).toMatchObject({ touchdownByS: null, why: "not reached" });
    },
  );
  it("moves with the next flight's air", () => {
    const hot = flights(3, { measures: HEAT, load: { meanDriverA2: 800 } });
    expect(setTimer(hot, FITTED, { ...NEXT, ambientC: 45 }, null).binding).toBe("temperature");
    expect(setTimer(hot, FITTED, { ...NEXT, ambientC: 20 }, null).limits[2]?.touchdownByS).toBeNull();
  });
  it("names a flight that was too hot when no heating could be fitted", () => {
    const tooHot = { controllerHotDayPeakC: sure(104, "degC") };
    const [, , limit] = setTimer(flights(3, { measures: tooHot }), FITTED, NEXT, null).limits;
    expect(limit?.touchdownByS).toBeNull();
    expect(limit?.why).toContain("flight-1");
  });
});
