import { describe, expect, test } from "vitest";
import { NO_FACTS } from "../../../src/aircraft/facts.ts";
import { analyseRecording } from "../../../src/flight/analysis/index.ts";
import { noValueHere } from "../../../src/flight/analysis/sumSentences.ts";
import type { Recording } from "../../../src/log/recording/index.ts";
import { recordingOf } from "../../support/recordingOf.ts";
import {
  FLIGHT,
  REST,
  type Stretch,
  syntheticRecording,
  TAXI,
  withMissing,
} from "../../support/syntheticRecording.ts";

/** Take-off at 25 s, flight power to 145 s, motor stopped at 155 s. */
const STRETCHES: readonly Stretch[] = [REST, TAXI, FLIGHT, TAXI, { ...REST, lengthS: 30 }];
const whole = syntheticRecording(STRETCHES);
const FACTS = { ...NO_FACTS, pack: { ...NO_FACTS.pack, cells: 8 } };
const measuresOf = (recording: Recording) =>
  analyseRecording(recording, FACTS, { ambientC: null, startPct: null })[0]!.measures;
const truth = measuresOf(whole);

/** The log without its rows from `fromS` to before `toS`. */
function withoutRows(fromS: number, toS: number): Recording {
  const isKept = (row: number) => !(whole.timeS[row]! >= fromS && whole.timeS[row]! < toS);
  const kept = (values: Float64Array) => values.filter((_, row) => isKept(row));
  const channels = new Map([...whole.channels].map(([channel, values]) => [channel, kept(values)]));
  return recordingOf({ timeS: kept(whole.timeS), channels });
}

describe.each([
  { what: "rows", lose: withoutRows },
  {
    what: "current",
    lose: (fromS: number, toS: number) => withMissing(whole, "current", fromS, toS),
  },
])("$what lost for less than a minute", ({ lose }) => {
  test.each([
    ["the advance to take-off", 20, 60],
    ["the motor's start and the take-off", 5, 50],
    ["the end of flight power", 100, 150],
    ["the end of flight power and the motor's stop", 100, 158],
  ])("over %s: every interval reaches what happened in the hole", (_, fromS, toS) => {
    const measures = measuresOf(lose(fromS, toS));
    for (const name of ["flightTimeS", "motorRunTimeS", "chargeUsedMah", "flightChargeMah"] as const) {
      const { low, high } = measures[name] as { low: number | null; high: number | null };
      expect(low ?? Number.NEGATIVE_INFINITY, name).toBeLessThanOrEqual(truth[name].value!);
      expect(high ?? Number.POSITIVE_INFINITY, name).toBeGreaterThanOrEqual(truth[name].value!);
    }
  });
});

describe("volts that drop out", () => {
  test.each([
    [20, 60],
    [5, 50],
    [100, 158],
  ])("from %s to %s s change no time and no charge", (fromS, toS) => {
    const measures = measuresOf(withMissing(whole, "packVoltage", fromS, toS));
    for (const name of ["flightTimeS", "motorRunTimeS", "chargeUsedMah", "flightChargeMah"] as const) {
      expect(measures[name].value).toBeCloseTo(truth[name].value!, 6);
    }
  });
});

test("volts lost all the while the motor runs give no sag and no lowest cell, instead of 0", () => {
  const measures = measuresOf(
    withMissing(syntheticRecording([REST, TAXI, { ...FLIGHT, lengthS: 35 }, REST]), "packVoltage", 15, 60),
  );
  for (const name of ["sagPerCellV", "minPackV", "minCellV"] as const) {
    expect(measures[name]).toMatchObject({ value: null, why: noValueHere("packVoltage") });
  }
});

describe("a current that sticks in flight", () => {
  /** 15 s of rest, two minutes of a load that swings, 15 s of rest, at 5 Hz. */
  const timeS = Float64Array.from({ length: 750 }, (_, row) => row / 5);
  const trueA = timeS.map((atS) => (atS < 15 || atS > 135 ? 0 : 30 + 15 * Math.sin(atS / 3)));
  const packVoltage = trueA.map((amps) => 33 - 0.05 * amps);
  const measuresReading = (current: Float64Array, volts = packVoltage) =>
    measuresOf(
      recordingOf({
        timeS,
        channels: new Map([
          ["packVoltage", volts],
          ["current", current],
        ]),
      }),
    );
  const truly = measuresReading(trueA);

  test.each([0, 20, 44])("at %s A for 50 s: sums reach from nothing to the largest neighbour", (stuckA) => {
    const measures = measuresReading(
      trueA.map((amps, row) => (timeS[row]! > 50 && timeS[row]! < 100 ? stuckA : amps)),
    );
    for (const name of ["chargeUsedMah", "energyUsedWh", "flightChargeMah", "meanCurrentA"] as const) {
      const { low, high } = measures[name] as { low: number; high: number };
      expect(low, name).toBeLessThanOrEqual(truly[name].value!);
      expect(high, name).toBeGreaterThanOrEqual(truly[name].value!);
    }
    expect(measures.chargeUsedMah).toMatchObject({ bound: "interval", basis: "estimated" });
    expect(measures.chargeUsedMah.why).toContain("sticks");
  });

  test("where volts are missing at its edges, the energy is still a number", () => {
    const current = trueA.map((amps, row) => (timeS[row]! > 50 && timeS[row]! < 100 ? 20 : amps));
    const volts = packVoltage.map((volt, row) => (timeS[row]! > 49 && timeS[row]! < 51 ? Number.NaN : volt));
    expect(measuresReading(current, volts).energyUsedWh.value).toBeGreaterThan(0);
  });
});
