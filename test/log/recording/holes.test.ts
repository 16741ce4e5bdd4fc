import { describe, expect, test } from "vitest";
import type { ChannelName } from "../../../src/base/channels/index.ts";
import { holeLimitS, recordLog } from "../../../src/log/recording/index.ts";
import { seededRandom } from "../../generator/index.ts";
import { readLogOf, UNCORRECTED } from "../../support/readLogOf.ts";

const { NaN: missing } = Number;

function record(timeS: readonly number[], channels: Partial<Record<ChannelName, readonly number[]>>) {
  return recordLog(readLogOf({ timeS, channels }), UNCORRECTED);
}

const every = (stepS: number, rows: number) => Array.from({ length: rows }, (_, row) => row * stepS);
const amps = (rows: number) => Array.from({ length: rows }, (_, row) => 20 + 5 * Math.sin(row / 9));
const volts = (rows: number) => Array.from({ length: rows }, (_, row) => 24 - Math.sin(row / 9) / 3);

describe("usable rows and holes", () => {
  test("a hole is more than 2 s, or five median steps in a slow log", () => {
    expect(holeLimitS(0.2)).toBeCloseTo(2, 5);
    expect(holeLimitS(1)).toBeCloseTo(5, 5);
    const slow = every(1, 60).filter((time) => time < 20 || time > 23);
    expect(record(slow, { current: amps(slow.length) }).holes).toEqual([]);
    const slower = every(1, 60).filter((time) => time < 20 || time > 25);
    expect(record(slower, { current: amps(slower.length) }).holes).toHaveLength(1);
  });

  test("two seconds as decimals are no more than two seconds", () => {
    const from = (lastS: number) => [6.4, 6.6, 6.8, lastS, 9, 9.2];
    expect(8.8 - 6.8).toBeGreaterThan(2);
    expect(record(from(8.8), { current: amps(6), packVoltage: volts(6) }).holes).toEqual([]);
    expect(record(from(8.801), { current: amps(6), packVoltage: volts(6) }).holes).toHaveLength(1);
  });

  test("rows without volts or amps are not usable, and make a hole when they last", () => {
    const current = amps(300).map((value, row) => (row >= 100 && row < 125 ? missing : value));
    const packVoltage = volts(300).map((value, row) => (row === 200 ? missing : value));
    const recording = record(every(0.2, 300), { current, packVoltage });
    expect(recording.rowsUsed).toBe(274);
    expect(recording.holes).toHaveLength(1);
    expect(recording.holes[0]).toMatchObject({ rowBefore: 99, rowAfter: 125 });
    const texts = recording.notices.map((notice) => notice.text).join(" ");
    expect(texts).toContain("Current is missing for 5.20 s (lines 102 to 126)");
    expect(recording.notices.find((notice) => notice.code === "channel-missing")).toMatchObject({
      count: 25,
    });
  });

  test("missing at the start or end is said, but no hole", () => {
    const current = amps(300).map((value, row) => (row < 50 || row > 280 ? missing : value));
    const recording = record(every(0.2, 300), { current, packVoltage: volts(300) });
    expect(recording.holes).toEqual([]);
    expect(recording.durationS).toBeCloseTo(46, 9);
    expect(recording.notices[0]!.text).toContain("lines 2 to 51");
  });

  test("channels blank together are told once, and not again cell by cell", () => {
    const blank = (values: readonly number[]) => values.map((value, row) => (row < 50 ? missing : value));
    const channels = { current: blank(amps(300)), packVoltage: blank(volts(300)) };
    const cells = (text: string) =>
      ({ code: "cells-missing", severity: "warning", text, count: 50, lines: [2] }) as const;
    const notices = [cells("In column 2 50 cells are missing, at lines 2, 3."), cells('…; written "n/a".')];
    const log = readLogOf({ timeS: every(0.2, 300), channels, notices });
    const told = recordLog(log, UNCORRECTED).notices;
    expect(told.map(({ code }) => code)).toEqual(["cells-missing", "channel-missing"]);
    expect(told[0]!.text).toContain("written");
    expect(told[1]!.text).toContain("current, pack voltage");
  });

  test("a log without volts is judged by its amps, without amps by its volts, without both by its times", () => {
    const current = amps(100).map((value, row) => (row === 5 ? missing : value));
    expect(record(every(0.2, 100), { current }).rowsUsed).toBe(99);
    const packVoltage = volts(100).map((value, row) => (row < 7 ? missing : value));
    expect(record(every(0.2, 100), { packVoltage }).rowsUsed).toBe(93);
    expect(record(every(0.2, 100), { altitude: amps(100) }).rowsUsed).toBe(100);
  });

  test("a log without a single usable row has no duration", () => {
    const nothing = every(0.2, 50).map(() => missing);
    expect(record(every(0.2, 50), { current: nothing })).toMatchObject({
      rowsUsed: 0,
      durationS: 0,
      holes: [],
    });
  });

  test.each([11, 12, 13, 14, 15, 16, 17, 18])("rows taken out anywhere are found again (seed %i)", (seed) => {
    const random = seededRandom(seed);
    const stepS = random.between(0.05, 0.9);
    const lengthS = random.between(5 * stepS + 2, 40);
    const start = random.whole(5, 200);
    const timeS = every(stepS, 400).filter((time, row) => row < start || time > start * stepS + lengthS);
    const recording = record(timeS, { current: amps(timeS.length) });
    expect(recording.holes).toHaveLength(1);
    const [hole] = recording.holes;
    expect(Math.abs(hole!.endS - hole!.startS - lengthS)).toBeLessThanOrEqual(2 * stepS);
  });
});
