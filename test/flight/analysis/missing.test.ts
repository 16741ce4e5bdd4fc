import { describe, expect, it } from "vitest";
import type { Facts } from "../../../src/aircraft/facts.ts";
import type { ChannelName } from "../../../src/base/channels/index.ts";
import {
  type DayFacts,
  MEASURE_NAMES,
  type MeasureName,
  type Measures,
} from "../../../src/flight/analysis/index.ts";
import type { Recording } from "../../../src/log/recording/index.ts";
import { randomFlight } from "../../identify/randomFlight.ts";
import { recordingOf } from "../../support/recordingOf.ts";
import { honestlyAnalysed } from "./honest.ts";

const SEED = 77_001;
const whole = randomFlight(SEED, { script: { flightS: 120 } });
const day: DayFacts = whole.day;
const complete = measured(whole.recording, whole.facts);

function measured(recording: Recording, facts: Facts, given: DayFacts = day): Measures {
  const flights = honestlyAnalysed(recording, facts, given);
  expect(flights).toHaveLength(1);
  return flights[0]!.measures;
}

const withChannel = (channel: ChannelName, values: Float64Array | null): Recording => {
  const channels = new Map(whole.recording.channels);
  if (values === null) channels.delete(channel);
  else channels.set(channel, values);
  return { ...whole.recording, channels };
};
const silent = () => new Float64Array(whole.recording.rows).fill(Number.NaN);

/** Without motor constants nothing stands in for a current that is not logged. */
const noMotor: Facts = { ...whole.facts, motor: { ...whole.facts.motor, kv: null } };
const CHARGE = ["chargeUsedMah", "chargeCoveredMah"] as const;
const SHARED = ["chargeUsedMah", "chargeCoveredMah", "energyUsedWh", "energyCoveredWh"] as const;
const VOLTS = ["restPackV", "restCellV"] as const;
const HEAT = ["controllerTimeConstantS", "controllerRisePerA2"] as const;
const PACK = ["packResistanceMohm", "packResistance10sMohm"] as const;

/** Channel, facts beside it, the measures that cannot be given without it, those it must not touch. */
const CHANNELS: readonly (readonly [ChannelName, Facts, readonly MeasureName[], readonly MeasureName[]])[] = [
  [
    "current",
    noMotor,
    [
      ...[...SHARED, ...PACK, ...HEAT, "flightChargeMah", "peakCurrentA", "meanCurrentA", "peakPowerW"],
      ...["overRatingS", "longestOverRatingS", "staticCurrentA", "staticPowerW", "powerLoadingWPerKg"],
      ...["chargeLeftPct"],
    ] as MeasureName[],
    [...VOLTS, "peakRpm"],
  ],
  [
    "packVoltage",
    whole.facts,
    [
      ...[...VOLTS, ...PACK, "energyUsedWh", "energyCoveredWh", "peakPowerW", "staticPowerW", "minPackV"],
      ...["minCellV", "sagPerCellV", "powerLoadingWPerKg", "propellerPowerCoefficient", "motorEfficiencyPct"],
    ] as MeasureName[],
    [...CHARGE, "peakCurrentA", "overRatingS", "peakRpm", "staticRpm", "controllerPeakC"],
  ],
  [
    "shaftSpeed",
    whole.facts,
    ["peakRpm", "staticRpm", "propellerPowerCoefficient", "motorEfficiencyPct"],
    [...SHARED, ...VOLTS, "peakCurrentA", "peakPowerW", "minPackV"],
  ],
  [
    "controllerTemperature",
    whole.facts,
    [...HEAT, "controllerPeakC", "controllerMarginC", "controllerHotDayPeakC", "controllerHotDayMarginC"],
    MEASURE_NAMES.filter((name) => !name.startsWith("controller")),
  ],
];

describe(`a flight (seed ${SEED}) of which a channel`, () => {
  it("is there gives every measure but those of probes it has not", () => {
    const none = MEASURE_NAMES.filter((name) => complete[name].value === null);
    expect(none).toEqual(["motorPeakC", "packPeakC", "packStartC"]);
  });

  describe.each(CHANNELS)("%s", (channel, facts, lost, untouched) => {
    const expected = facts === whole.facts ? complete : measured(whole.recording, facts);
    it.each(["is not logged", "holds no value", "comes from a dead sensor"])("%s", (how) => {
      const recording =
        how === "comes from a dead sensor"
          ? { ...whole.recording, dead: [{ channel, why: "the sensor is dead" }] }
          : withChannel(channel, how === "is not logged" ? null : silent());
      const found = measured(recording, facts);
      expect(lost.filter((name) => found[name].value !== null)).toEqual([]);
      for (const name of untouched) expect(found[name], name).toEqual(expected[name]);
      if (how === "comes from a dead sensor") {
        const whys = lost.map((name) => (found[name] as { why: string }).why);
        expect(whys.filter((why) => why === "the sensor is dead").length).toBeGreaterThan(lost.length / 2);
      }
    });
  });
});

describe("a flight without a fact", () => {
  const { facts } = whole;
  const FACTS: readonly (readonly [string, Facts, readonly MeasureName[], readonly MeasureName[]])[] = [
    ["flyingMassKg", { ...facts, flyingMassKg: null }, ["powerLoadingWPerKg"], []],
    [
      "pack.cells",
      { ...facts, pack: { ...facts.pack, cells: null } },
      ["restCellV", "minCellV", "sagPerCellV"],
      ["chargeLeftPct"],
    ],
    ["pack.capacityMah", { ...facts, pack: { ...facts.pack, capacityMah: null } }, ["chargeLeftPct"], []],
    [
      "controller.continuousA",
      { ...facts, controller: { ...facts.controller, continuousA: null } },
      ["overRatingS", "longestOverRatingS"],
      [],
    ],
    [
      "controller.limitC",
      { ...facts, controller: { ...facts.controller, limitC: null } },
      ["controllerMarginC", "controllerHotDayMarginC"],
      [],
    ],
    [
      "propeller.diameterIn",
      { ...facts, propeller: { ...facts.propeller, diameterIn: null } },
      ["propellerPowerCoefficient"],
      [],
    ],
    ["motor.maxPowerW", { ...facts, motor: { ...facts.motor, maxPowerW: null } }, [], []],
    ["propeller.maxRpm", { ...facts, propeller: { ...facts.propeller, maxRpm: null } }, [], []],
    ["propeller.pitchIn", { ...facts, propeller: { ...facts.propeller, pitchIn: null } }, [], []],
    ["motor.polePairs", { ...facts, motor: { ...facts.motor, polePairs: null } }, [], []],
  ];

  it.each(FACTS)("%s loses what needs it and nothing else", (_, given, lost, moved) => {
    const found = measured(whole.recording, given);
    for (const name of lost) expect(found[name].value, name).toBeNull();
    const kept = MEASURE_NAMES.filter((name) => !lost.includes(name) && !moved.includes(name));
    for (const name of kept) expect(found[name], name).toEqual(complete[name]);
  });

  it("motor constants loses the motor's and the propeller's", () => {
    const found = measured(whole.recording, noMotor);
    for (const name of ["propellerPowerCoefficient", "motorEfficiencyPct"] as const) {
      expect(found[name].value).toBeNull();
    }
    for (const name of [...SHARED, ...PACK, "controllerPeakC"] as const) {
      expect(found[name]).toEqual(complete[name]);
    }
  });
});

describe("the air of the day", () => {
  it("is taken from the pilot, else from the log, else more loosely from the controller at rest", () => {
    const air = new Float64Array(whole.recording.rows).fill(day.ambientC! + 1);
    const logged = withChannel("ambientTemperature", air);
    const unstated = { ...day, ambientC: null };
    const widths = [
      measured(logged, whole.facts),
      measured(logged, whole.facts, unstated),
      measured(whole.recording, whole.facts, unstated),
    ].map(({ controllerHotDayPeakC: peak }) => {
      if (peak.value === null) throw new Error(peak.why);
      return { value: peak.value, width: peak.value - peak.low! };
    });
    // A degree more of air on the day is a degree less on the hot one.
    expect(widths[1]!.value - widths[0]!.value).toBeCloseTo(-1, 9);
    for (const { width } of widths.slice(0, 2)) expect(width).toBeLessThan(widths[2]!.width);
  });

  it("that is not known leaves the hot day out", () => {
    const start = whole.recording.channels.get("controllerTemperature")!.slice();
    start.fill(Number.NaN, 0, start.length / 2);
    const found = measured(withChannel("controllerTemperature", start), whole.facts, {
      ...day,
      ambientC: null,
    });
    expect(found.controllerHotDayPeakC.value).toBeNull();
    expect(found.controllerPeakC.value).not.toBeNull();
  });
});

describe("a part of a log", () => {
  const part = (firstRow: number, rows: number): Recording =>
    recordingOf({
      timeS: whole.recording.timeS.slice(firstRow, firstRow + rows).map((s, _, all) => s - all[0]!),
      channels: new Map(
        [...whole.recording.channels].map(([name, values]) => [
          name,
          values.slice(firstRow, firstRow + rows),
        ]),
      ),
    });
  const rowAt = (atS: number) => whole.recording.timeS.findIndex((s) => s >= atS);

  it.each([1, 2, 3, 8])("of %d rows at rest is a bench run without numbers of a flight", (rows) => {
    const [flight] = honestlyAnalysed(part(0, rows), whole.facts, day);
    expect(flight).toMatchObject({ kind: "benchRun", complete: true });
    expect(flight!.measures.flightTimeS.value).toBeNull();
    expect(flight!.measures.packResistanceMohm.value).toBeNull();
    expect(flight!.measures.controllerTimeConstantS.value).toBeNull();
  });

  it("that starts or ends in flight is not complete, and its charge a lower bound", () => {
    const takeOffS = whole.sortie.takeOffS!;
    const middle = rowAt(takeOffS + 60);
    const ends = honestlyAnalysed(part(0, middle), whole.facts, day)[0]!;
    const starts = honestlyAnalysed(part(middle, whole.recording.rows - middle), whole.facts, day)[0]!;
    for (const { complete: isComplete, measures } of [ends, starts]) {
      expect(isComplete).toBe(false);
      expect(measures.chargeUsedMah).toMatchObject({ bound: "atLeast", high: null });
      expect(measures.chargeLeftPct).toMatchObject({ bound: "atMost" });
    }
    const sum = (ends.measures.chargeCoveredMah.value ?? 0) + (starts.measures.chargeCoveredMah.value ?? 0);
    const rowMah = (200 * whole.recording.stepS) / 3.6;
    expect(Math.abs(sum - complete.chargeCoveredMah.value!)).toBeLessThan(rowMah);
  });

  it("cut anywhere is honest", () => {
    for (let share = 1; share < 6; share++) {
      const rows = Math.floor((whole.recording.rows * share) / 6);
      honestlyAnalysed(part(0, rows), whole.facts, day);
      honestlyAnalysed(part(rows, whole.recording.rows - rows), whole.facts, day);
    }
  });
});
