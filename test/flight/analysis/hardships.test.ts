import { describe, expect, it } from "vitest";
import type { Facts } from "../../../src/aircraft/facts.ts";
import type { ChannelName } from "../../../src/base/channels/index.ts";
import { LINES_DO_NOT_MEET, NO_DIAMETER } from "../../../src/flight/analysis/identifiedSentences.ts";
import type { DayFacts } from "../../../src/flight/analysis/index.ts";
import { CURRENT_AT_CEILING } from "../../../src/flight/analysis/sumSentences.ts";
import type { Recording } from "../../../src/log/recording/index.ts";
import { predictStaticPowerCoefficient } from "../../../src/physics/index.ts";
import { randomFlight } from "../../identify/randomFlight.ts";
import { recordingOf } from "../../support/recordingOf.ts";
import { FLIGHT, REST, syntheticRecording, TAXI } from "../../support/syntheticRecording.ts";
import { honestlyAnalysed } from "./honest.ts";

const SEED = 77_002;
const NONE = Number.NaN;
const { recording, facts, day, sortie } = randomFlight(SEED, { script: { flightS: 100 } });
const { timeS } = recording;

type Change = (value: number, row: number) => number;
/** The flight with some channels changed; null takes one away. */
function changed(changes: Readonly<Partial<Record<ChannelName, Change | null>>>, of = recording): Recording {
  const channels = new Map(of.channels);
  for (const [name, change] of Object.entries(changes) as [ChannelName, Change | null][]) {
    if (change === null) channels.delete(name);
    else channels.set(name, (channels.get(name) ?? new Float64Array(of.rows)).map(change));
  }
  return recordingOf({ timeS: of.timeS, channels });
}

function one(of: Recording, given: Facts = facts, on: DayFacts = day) {
  const flights = honestlyAnalysed(of, given, on);
  expect(flights).toHaveLength(1);
  return flights[0]!;
}

const between = (fromS: number, toS: number) => (row: number) => timeS[row]! >= fromS && timeS[row]! < toS;
const inFlight = (fromS: number, toS: number) => between(sortie.takeOffS! + fromS, sortie.takeOffS! + toS);
const plain = one(recording);

describe("a probe that fell silent in the air", () => {
  const isSilent = inFlight(30, 80);
  const { measures } = one(
    changed({ controllerTemperature: (value, row) => (isSilent(row) ? NONE : value) }),
  );

  it("gives peaks as lower bounds and margins as upper ones", () => {
    for (const name of ["controllerPeakC", "controllerHotDayPeakC"] as const) {
      expect(measures[name]).toMatchObject({ bound: "atLeast", high: null });
    }
    for (const name of ["controllerMarginC", "controllerHotDayMarginC"] as const) {
      expect(measures[name]).toMatchObject({ bound: "atMost", low: null });
    }
    const peak = measures.controllerPeakC.value!;
    expect(measures.controllerMarginC.value).toBeCloseTo(facts.controller.limitC! - peak, 9);
    expect(measures.controllerMarginC).toMatchObject({ why: expect.stringMatching(/\S/) });
  });

  it("on a hot day no warmer than this one the peak grows by nothing", () => {
    const cool = { ...facts, field: { ...facts.field, hotDayC: day.ambientC! } };
    const peak = one(recording, cool).measures.controllerHotDayPeakC as {
      value: number;
      low: number;
      high: number;
    };
    expect(peak.high - peak.value).toBeCloseTo(peak.value - peak.low, 9);
    const hot = plain.measures.controllerHotDayPeakC as typeof peak;
    expect(hot.high - hot.value).toBeGreaterThan(hot.value - hot.low);
  });
});

describe("a current that went missing in the air", () => {
  const isLost = inFlight(20, 95);
  const lost = changed({ current: (value, row) => (isLost(row) ? NONE : value) });
  const rated = { ...facts, controller: { ...facts.controller, continuousA: 20 } };

  it("leaves its sums, its mean's upper end and the time over the rating open", () => {
    const { measures } = one(lost, rated);
    for (const name of ["chargeUsedMah", "energyUsedWh", "overRatingS", "longestOverRatingS"] as const) {
      expect(measures[name], name).toMatchObject({ bound: "atLeast", high: null });
    }
    expect(measures.meanCurrentA).toMatchObject({ bound: "atLeast" });
    expect(measures.overRatingS.value!).toBeLessThanOrEqual(
      one(recording, rated).measures.overRatingS.value!,
    );
  });

  it("that stays at its sensor's ceiling below the rating was above it for at least nothing", () => {
    const clipped = changed({ current: (value) => Math.min(value, 25) });
    const { measures } = one(clipped, { ...facts, controller: { ...facts.controller, continuousA: 30 } });
    expect(measures.overRatingS).toMatchObject({ value: 0, bound: "atLeast", high: null });
  });
});

describe("a current sensor at its ceiling", () => {
  const { measures, notices } = one(changed({ current: (value) => Math.min(value, 25) }));

  it("leaves full throttle's current, its power, the mean and every sum open above", () => {
    const open = [
      "staticCurrentA",
      "staticPowerW",
      "powerLoadingWPerKg",
      "peakCurrentA",
      "peakPowerW",
    ] as const;
    const sums = ["meanCurrentA", "chargeUsedMah", "chargeCoveredMah", "energyCoveredWh"] as const;
    for (const name of [...open, ...sums]) {
      expect(measures[name], name).toMatchObject({ bound: "atLeast", high: null });
      expect(measures[name].value, name).toBeLessThanOrEqual(plain.measures[name].value!);
    }
    expect(measures.staticRpm).toEqual(plain.measures.staticRpm);
  });

  it("tells nothing of the parts whose fits rest on it, and questions no setting", () => {
    for (const name of [
      "packResistanceMohm",
      "packResistance10sMohm",
      "controllerTimeConstantS",
      "controllerRisePerA2",
      "propellerPowerCoefficient",
      "motorEfficiencyPct",
    ] as const) {
      expect(plain.measures[name].value, name).not.toBeNull();
      expect(measures[name], name).toMatchObject({ value: null, why: CURRENT_AT_CEILING });
    }
    expect(notices.filter(({ code }) => /^(setting|kv)-/.test(code))).toEqual([]);
  });
});

describe("a propeller that is not the one of the aircraft file", () => {
  const { diameterIn, pitchIn, blades } = facts.propeller;
  const shape = { diameterIn: diameterIn!, pitchIn: pitchIn!, blades, family: "sport" };
  const noticed = (shareOfDiameter: number) => {
    const diameterIn = shape.diameterIn * shareOfDiameter;
    const propeller = { ...facts.propeller, ...shape, diameterIn };
    const { notices, measures } = one(recording, { ...facts, propeller });
    const found = notices.find(({ code }) => code === "coefficient-unlike");
    return { found, value: measures.propellerPowerCoefficient.value! };
  };

  it("is seen by a coefficient outside the published range, which plan uses too", () => {
    expect(noticed(1).found).toBeUndefined();
    for (const share of [0.8, 1.3]) {
      const { found, value } = noticed(share);
      const { low, high } = predictStaticPowerCoefficient({ ...shape, diameterIn: share * shape.diameterIn });
      expect(found).toMatchObject({ severity: "warning" });
      expect(found!.text).toContain(
        `${value.toPrecision(3)}, outside ${low.toPrecision(2)} to ${high.toPrecision(2)}`,
      );
      for (const cause of ["propeller's size", "current sensor", "speed"]) {
        expect(found!.text).toContain(cause);
      }
    }
  });
});

describe("volts that went missing", () => {
  it("in all rows of the full throttle leave static power out, not static current", () => {
    const isFull = between(0, sortie.takeOffS!);
    const { measures } = one(changed({ packVoltage: (value, row) => (isFull(row) ? NONE : value) }));
    expect(measures.staticPowerW.value).toBeNull();
    expect(measures.powerLoadingWPerKg.value).toBeNull();
    expect(measures.staticCurrentA).toEqual(plain.measures.staticCurrentA);
  });
});

describe("estimates of a current that nobody logged", () => {
  const noCurrent = changed({ current: null });
  const NAMES = ["peakCurrentA", "chargeUsedMah", "staticCurrentA"] as const;
  const basesOf = (of: Recording, given = facts) => {
    const { measures } = one(of, given);
    return NAMES.map((name) => {
      const quantity = measures[name];
      return quantity.value === null ? null : quantity.basis;
    });
  };

  it("are called estimated", () => {
    expect(basesOf(noCurrent)).toEqual(["estimated", "estimated", "estimated"]);
  });

  it.each<[string, Recording, Facts]>([
    ["without the motor's constants", noCurrent, { ...facts, motor: { ...facts.motor, kv: null } }],
    [
      "without the propeller's size",
      noCurrent,
      { ...facts, propeller: { ...facts.propeller, diameterIn: null } },
    ],
    ["without volts", changed({ current: null, packVoltage: null }), facts],
    ["without shaft speed", changed({ current: null, shaftSpeed: null }), facts],
    ["with a speed that is no such motor's", changed({ current: null, shaftSpeed: (rpm) => 2 * rpm }), facts],
    ["with a speed far too slow", changed({ current: null, shaftSpeed: (rpm) => rpm / 3 }), facts],
  ])("are none %s", (_, of, given) => expect(basesOf(of, given)).toEqual([null, null, null]));

  it("of a flight without full throttle on the ground rest on its highest duty", () => {
    const air = randomFlight(SEED, { script: { flightS: 60, hasRunUp: false } });
    const of = changed({ current: null }, air.recording);
    expect(one(of, air.facts, air.day).measures.staticCurrentA.value).toBeNull();
    expect(one(of, air.facts, air.day).measures.peakCurrentA).toMatchObject({ basis: "estimated" });
    const twice = changed({ current: null, shaftSpeed: (rpm) => 2 * rpm }, air.recording);
    expect(one(twice, air.facts, air.day).measures.peakCurrentA.value).toBeNull();
  });
});

describe("facts that do not fit the log", () => {
  const loadOf = (given: Facts) => one(recording, given).pictures.load;
  const motor = (more: Partial<Facts["motor"]>): Facts => ({ ...facts, motor: { ...facts.motor, ...more } });

  it("a motor that could not turn the propeller has no lines that meet", () => {
    expect(loadOf(motor({ noLoadA: 5000 }))).toMatchObject({ lines: null, why: LINES_DO_NOT_MEET });
  });

  it("a propeller without a size has no line", () => {
    const given = { ...facts, propeller: { ...facts.propeller, diameterIn: null } };
    expect(loadOf(given)).toMatchObject({ lines: null, why: NO_DIAMETER });
  });

  it("of two motors each has half of the static current", () => {
    const shares = [1, 2].map((count) => loadOf(motor({ count })).lines!.staticA.value!);
    expect(shares[1]).toBeCloseTo(shares[0]! / 2, 9);
  });

  it("a motor of far too high a kv runs at too low a duty for an efficiency", () => {
    const { measures } = one(recording, motor({ kv: 5 * facts.motor.kv! }));
    expect(measures.motorEfficiencyPct.value).toBeNull();
    expect(measures.propellerPowerCoefficient.value).toBeNull();
  });

  it("without any air temperature the standard one stands in for the density", () => {
    const nowhere = { ...facts, field: { ...facts.field, ambientC: null } };
    const coefficient = one(recording, nowhere, { ...day, ambientC: null }).measures
      .propellerPowerCoefficient;
    const standard = one(recording, nowhere, { ...day, ambientC: 15 }).measures.propellerPowerCoefficient;
    expect(coefficient.value).toBeCloseTo(standard.value!, 12);
  });
});

describe("cells beside the pack", () => {
  const cells = facts.pack.cells!;
  const cellOf =
    (weight: number): Change =>
    (_, row) => {
      const volts = recording.channels.get("packVoltage")![row]!;
      return (volts / cells) * (1 + weight);
    };
  const celled = (more: Parameters<typeof changed>[0] = {}, dead: Recording["dead"] = []) => ({
    ...changed({ cellVoltage1: cellOf(0), cellVoltage2: cellOf(0.001), ...more }),
    dead,
  });

  it("are each told with what they rest at and fall to", () => {
    const { weakestPart } = one(celled());
    expect(weakestPart?.parts.map(({ number }) => number)).toEqual([1, 2]);
    const { restV, minV } = weakestPart!.parts[0]!;
    expect(restV.value).toBeCloseTo(plain.measures.restCellV.value!, 6);
    expect(minV.value).toBeCloseTo(plain.measures.minPackV.value! / cells, 9);
  });

  it("share no resistance without a current, and are none where only one works", () => {
    const { weakestPart } = one(celled({ current: null }));
    for (const { resistanceMohm, sagSharePct } of weakestPart!.parts) {
      expect([resistanceMohm.value, sagSharePct.value]).toEqual([null, null]);
    }
    expect(weakestPart!.weakest).toBeNull();
    expect(one(celled({}, [{ channel: "cellVoltage2", why: "dead" }])).weakestPart).toBeNull();
  });

  it("without rest before the first run, or in a load that never moves, give no more than they can", () => {
    const constant = changed(
      { cellVoltage1: () => 4, cellVoltage2: () => 4 },
      syntheticRecording([{ ...FLIGHT, lengthS: 60 }, TAXI, REST]),
    );
    const [flight] = honestlyAnalysed(constant, facts, day);
    for (const { restV, resistanceMohm } of flight!.weakestPart!.parts) {
      expect([restV.value, resistanceMohm.value]).toEqual([null, null]);
    }
    expect(flight!.measures.packResistanceMohm.value).toBeNull();
  });

  it("of which one is silent leave the lowest to the others, all silent to the pack's mean", () => {
    const silent: Change = () => NONE;
    const lowest = (more: Parameters<typeof changed>[0]) => one(celled(more)).measures.minCellV;
    expect(lowest({ cellVoltage1: silent }).value).toBeCloseTo(
      (plain.measures.minCellV.value ?? 0) * 1.001,
      9,
    );
    expect(lowest({ cellVoltage1: silent, cellVoltage2: silent })).toEqual(plain.measures.minCellV);
  });

  it("count the pack's where the aircraft file does not, two or more of them", () => {
    const unknown = { ...facts, pack: { ...facts.pack, cells: null } };
    const [both, single] = [celled(), changed({ cellVoltage1: cellOf(0) })].map(
      (of) => one(of, unknown).measures,
    );
    expect(both!.restCellV.value).toBeCloseTo(both!.restPackV.value! / 2, 9);
    expect(single!.restCellV.value).toBeNull();
  });
});

describe("sensors of height and speed with gaps", () => {
  it("move take-off and touchdown by no more than the gap", () => {
    const gappy: Change = (value, row) => (row % 4 === 0 ? NONE : value);
    const { measures } = one(changed({ altitude: gappy, airspeed: gappy }));
    expect(Math.abs(measures.flightTimeS.value! - plain.measures.flightTimeS.value!)).toBeLessThan(2);
  });

  it("that never show a value leave the flight to the power", () => {
    const silent: Change = () => NONE;
    const { measures } = one(changed({ altitude: silent, airspeed: silent, groundSpeed: silent }));
    const { low, high } = measures.flightTimeS as { low: number; high: number };
    expect(low).toBeLessThanOrEqual(sortie.flightTimeS!);
    expect(high).toBeGreaterThanOrEqual(sortie.flightTimeS!);
  });
});

describe("touchdown from power alone lies in its interval", () => {
  it.each([
    ["after a taxi", {}],
    ["without taxiing out", { taxiOutS: 0, hasRunUp: false }],
    ["without taxiing back", { taxiBackS: 0 }],
    ["without either", { taxiOutS: 0, taxiBackS: 0, hasRunUp: false }],
    ["with a closed throttle", { closesThrottleToLand: true, taxiBackS: 4 }],
    ["after a long approach", { approachS: 40, taxiOutS: 40 }],
  ])("%s", (_, script) => {
    for (const channels of [
      ["packVoltage", "current"],
      ["packVoltage", "current", "shaftSpeed"],
    ] as const) {
      const flight = randomFlight(SEED + 1, { script: { flightS: 60, ...script }, channels });
      const { measures } = one(flight.recording, flight.facts, flight.day);
      const { low, high } = measures.flightTimeS as { low: number; high: number };
      expect(low, channels.join()).toBeLessThanOrEqual(flight.sortie.flightTimeS!);
      expect(high, channels.join()).toBeGreaterThanOrEqual(flight.sortie.flightTimeS!);
    }
  });
});
