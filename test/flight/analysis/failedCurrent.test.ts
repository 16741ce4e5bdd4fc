import { describe, expect, test } from "vitest";
import { NO_FACTS } from "../../../src/aircraft/facts.ts";
import type { ChannelName } from "../../../src/base/channels/index.ts";
import { analyseRecording } from "../../../src/flight/analysis/index.ts";
import { recordLog } from "../../../src/log/recording/index.ts";
import { readLogOf, UNCORRECTED } from "../../support/readLogOf.ts";

const FACTS = { ...NO_FACTS, pack: { ...NO_FACTS.pack, cells: 6 } };
const RATE_HZ = 5;
const FAILS_S = 150;
const timeS = Array.from({ length: 385 * RATE_HZ }, (_, row) => row / RATE_HZ);

const wave = (atS: number) => Math.sin(atS / 6) + 0.5 * Math.sin(atS / 1.7);
const isIn = (atS: number, fromS: number, toS: number) => atS >= fromS && atS < toS;

/** Rest, taxi, take-off at 25 s, flight at 60 m to 345 s, landing, taxi to 372 s, rest. */
function trueAmps(atS: number): number {
  if (!isIn(atS, 10, 372)) return 0.4;
  if (isIn(atS, 25, 40)) return 60 - atS / 5;
  if (isIn(atS, 40, 345)) return 24 + 9 * wave(atS);
  return isIn(atS, 345, 358) ? 4 : 2.5;
}

function revs(atS: number): number {
  if (!isIn(atS, 10, 372)) return 0;
  if (isIn(atS, 25, 40)) return 6200;
  if (isIn(atS, 40, 345)) return 5000 + 700 * wave(atS);
  return isIn(atS, 345, 358) ? 3200 : 2000;
}

function altitude(atS: number): number {
  if (isIn(atS, 25, 40)) return 4 * (atS - 25);
  if (isIn(atS, 40, 345)) return 60;
  return isIn(atS, 345, 358) ? Math.max(0, 60 - 5 * (atS - 345)) : 0;
}

const round = (value: number) => Number(value.toFixed(2));
const TRUE_A = timeS.map((atS) => round(trueAmps(atS)));
const ALL: Readonly<Partial<Record<ChannelName, readonly number[]>>> = {
  packVoltage: timeS.map((atS) => round(25.1 - atS / 120 - 0.04 * trueAmps(atS))),
  shaftSpeed: timeS.map((atS) => Math.round(revs(atS))),
  altitude: timeS.map((atS) => round(altitude(atS))),
};

/** The flight with what the current sensor makes of it. */
function read(
  reading: (amps: number, atS: number, row: number) => number,
  without: readonly ChannelName[] = [],
) {
  const others = Object.entries(ALL).filter(([channel]) => !without.includes(channel as ChannelName));
  const current = TRUE_A.map((amps, row) => reading(amps, timeS[row]!, row));
  const channels = { ...Object.fromEntries(others), current };
  const recording = recordLog(readLogOf({ timeS, channels }), UNCORRECTED);
  const flights = analyseRecording(recording, FACTS, { ambientC: null, startPct: null });
  expect(flights).toHaveLength(1);
  return { flight: flights[0]!, measures: flights[0]!.measures, notices: recording.notices };
}

const truth = read((amps) => amps);
const BOUNDED = [
  "chargeUsedMah",
  "energyUsedWh",
  "flightChargeMah",
  "meanCurrentA",
  "peakCurrentA",
  "peakPowerW",
] as const;

function expectBounds({ measures }: ReturnType<typeof read>): void {
  for (const name of BOUNDED) {
    expect(measures[name], name).toMatchObject({ bound: "atLeast", high: null });
    expect((measures[name] as { low: number }).low, name).toBeLessThanOrEqual(truth.measures[name].value!);
  }
}

test("a sensor that works is not told on", () => {
  expect(truth.notices).toEqual([]);
  expect(truth.flight.notices).toEqual([]);
  expect(truth.measures.chargeUsedMah.value).toBeGreaterThan(2000);
});

const FAILURES: readonly [string, (row: number) => number, string][] = [
  ["nothing", () => 0, "reads 0 A for"],
  ["noise", (row) => round(0.2 * Math.abs(Math.sin(row))), "reads 0 to 0.2 A for"],
  ["one value", () => 27.31, "reads 27.31 A for"],
];

describe.each(FAILURES)("a current that reads %s from 150 s on", (_, failed, words) => {
  const reading = (amps: number, atS: number, row: number) => (atS >= FAILS_S ? failed(row) : amps);
  const found = read(reading);

  test("is named once, with its first line", () => {
    expect(found.notices).toMatchObject([{ code: "sensor-stuck", severity: "warning", lines: [752] }]);
    expect(found.notices[0]!.text).toContain(words);
  });

  test("makes lower bounds of what needs it", () => {
    expectBounds(found);
  });

  test("leaves flight, running and phases to the other channels", () => {
    expect(found.flight.complete).toBe(true);
    for (const name of ["flightTimeS", "motorRunTimeS", "minPackV"] as const) {
      expect(found.measures[name].value, name).toBeCloseTo(truth.measures[name].value!, 0);
    }
    expect(found.flight.phases.find(({ phase }) => phase === "landing")!.startS).toBeGreaterThan(340);
  });
});

test("with altitude but no shaft speed nothing lands at 60 m", () => {
  const { flight, measures } = read((amps, atS) => (atS >= FAILS_S ? 0 : amps), ["shaftSpeed"]);
  const landing = flight.phases.find(({ phase }) => phase === "landing");
  expect(landing?.startS ?? 400).toBeGreaterThan(340);
  expect(measures.flightTimeS.value).toBeCloseTo(truth.measures.flightTimeS.value!, 0);
});

test("from volts alone: named, the lowest volts still seen, the running time a bound that holds", () => {
  const found = read((amps, atS) => (atS >= FAILS_S ? 0 : amps), ["shaftSpeed", "altitude"]);
  expect(found.notices.map(({ code }) => code)).toEqual(["sensor-stuck"]);
  expect(found.flight.notices).toEqual([]);
  expect(found.measures.chargeUsedMah).toMatchObject({ bound: "atLeast" });
  expect(found.measures.minCellV.value).toBeCloseTo(truth.measures.minCellV.value!, 6);
  const { low } = found.measures.motorRunTimeS as { low: number };
  expect(low).toBeLessThanOrEqual(truth.measures.motorRunTimeS.value!);
});

test("a current that is blank from 150 s on does not count as 0 in the mean", () => {
  const { measures } = read((amps, atS) => (atS >= FAILS_S ? Number.NaN : amps));
  expect(measures.meanCurrentA).toMatchObject({ bound: "atLeast" });
  expect(measures.meanCurrentA.value).toBeGreaterThan(20);
});

test("a sensor that reads no higher than its limit gives lower bounds, and is named", () => {
  const found = read((amps) => Math.min(amps, 28));
  expect(found.notices.map(({ code }) => code)).toEqual(["sensor-stuck"]);
  expect(found.notices[0]!.text).toContain("reads 28 A, never more");
  expectBounds(found);
});

test("volts that are missing for over a minute do not split the flight", () => {
  const volts = ALL.packVoltage!.map((volt, row) => (isIn(timeS[row]!, 150, 240) ? Number.NaN : volt));
  const log = readLogOf({ timeS, channels: { ...ALL, packVoltage: volts, current: TRUE_A } });
  const flights = analyseRecording(recordLog(log, UNCORRECTED), FACTS, { ambientC: null, startPct: null });
  expect(flights).toMatchObject([{ kind: "flight", complete: true }]);
  expect(flights[0]!.measures.chargeUsedMah.value).toBeCloseTo(truth.measures.chargeUsedMah.value!, 6);
});
