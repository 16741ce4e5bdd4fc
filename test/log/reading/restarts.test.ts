import { describe, expect, it } from "vitest";
import { codesOf, logOf, outcomeOf } from "./support.ts";

const HEADER = "time_s,pack_v,current_a";

describe("loggers that start again in one file", () => {
  it("a header with another column is followed; earlier rows have it missing", () => {
    const log = logOf(
      `${HEADER}\n0,30,1\n1,31,2\n2,31,2\n${HEADER},rpm\n${"0,32,3,1000\n1,33,4,2000\n".repeat(9)}`,
    );
    expect([...log.channels.get("shaftSpeed")!.slice(1, 5)]).toEqual([Number.NaN, Number.NaN, 1000, 2000]);
    expect([...log.channels.get("packVoltage")!.slice(0, 5)]).toEqual([30, 31, 31, 32, 33]);
    expect(log.notices.map((notice) => notice.code)).toEqual([
      "header-repeated",
      "columns-changed",
      "cells-missing",
    ]);
  });

  it("a header without a column leaves it missing from there", () => {
    const log = logOf(`${HEADER},rpm\n0,30,1,1000\n1,31,2,1100\n${HEADER}\n0,32,3\n1,33,4\n`);
    expect([...log.channels.get("shaftSpeed")!]).toEqual([1000, 1100, Number.NaN, Number.NaN]);
  });

  it("preamble and units row come back too and are no rows", () => {
    const block = (from: number) => `Logger,unit 7\n${HEADER}\ns,V,A\n${from},30,1\n${from + 1},31,2\n`;
    const log = logOf(block(0) + block(2));
    expect([log.rows, log.dataLines]).toEqual([4, 4]);
    expect(log.columns.map((column) => column.unit)).toEqual(["s", "V", "A"]);
    expect([0, 1, 2, 3].map((row) => log.lineOfRow(row))).toEqual([4, 5, 9, 10]);
  });

  it("events between rows are left out and counted, a footer is not counted", () => {
    const log = logOf(`${HEADER}\n0,30,1\nEVENT cut\n1,31,2\n2,32,3\n\nMaximum,32\nTotal,9 mAh\n`);
    expect([log.rows, log.dataLines]).toEqual([3, 4]);
    expect(log.notices.map((notice) => [notice.code, notice.lines])).toEqual([
      ["rows-wrong-width", [3]],
      ["footer", [7, 8]],
    ]);
  });

  it("a single row is read", () => {
    expect([...logOf(`${HEADER}\n5,30,1\n`).timeS]).toEqual([0]);
  });

  it("a 16-bit millisecond counter is recognised where it wraps", () => {
    const rows = Array.from({ length: 400 }, (_, row) => `${(60_000 + row * 200) % 65_536},30,1`);
    expect(logOf(`time_ms,pack_v,current_a\n${rows.join("\n")}\n`).clock.wrapS).toBe(65.536);
  });

  it("blank cells behind the last name are nothing", () => {
    expect(codesOf(outcomeOf(`${HEADER}\n0,30,1,\n1,31,2,\n`))).toEqual([]);
    expect(codesOf(outcomeOf(`${HEADER},\n0,30,1\n1,31,2\n`))).toEqual([]);
    expect(codesOf(outcomeOf(`${HEADER},\n0,30,1,\n1,31,2,\n`))).toEqual([]);
  });

  it("a header with too few names asks, and numbers settle it", () => {
    const text = `${HEADER}\n7,0,30.5,1\n7,1,31.5,2\n`;
    expect(codesOf(outcomeOf(text))).toEqual(["header-width"]);
    const columns = new Map([
      ["time", "#2"],
      ["packVoltage", "#3"],
      ["current", "#4"],
    ] as const);
    expect([...logOf(text, { columns }).channels.get("current")!]).toEqual([1, 2]);
  });
});
