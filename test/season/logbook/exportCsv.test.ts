import { describe, expect, it } from "vitest";
import { cellText, flightsCsv } from "../../../src/season/logbook/index.ts";
import { ATTACK_STRINGS } from "../../support/attackStrings.ts";
import { entryWith } from "./entries.ts";

/** Cells of a table by RFC 4180, read independently of the writer. */
function cellsOf(csv: string): readonly (readonly string[])[] {
  const rows: string[][] = [[]];
  for (const match of csv.matchAll(/("(?:[^"]|"")*"|[^,"\r\n]*)(,|\r\n|$)/g)) {
    const [all, cell = "", end] = match;
    if (all === "" && end === "") break;
    rows.at(-1)?.push(cell.startsWith('"') ? cell.slice(1, -1).replaceAll('""', '"') : cell);
    if (end === "\r\n") rows.push([]);
  }
  return rows.slice(0, -1);
}

const NUMBER = /^-?\d+(\.\d+)?(e[+-]?\d+)?$/;

describe("flightsCsv", () => {
  it.each([
    ["=1+1", "'=1+1"],
    ["+1", "'+1"],
    ["-1", "'-1"],
    ["@cmd", "'@cmd"],
    ["\tx", "'\tx"],
    ["\rx", `"'\rx"`],
    ["\u0000x", "'\u0000x"],
    ["a,b", '"a,b"'],
    ['say "x"', '"say ""x"""'],
    ["two\nlines", '"two\nlines"'],
    [-1.5, "-1.5"],
    [1 / 3, "0.3333333333333333"],
    [Number.NaN, ""],
    [null, ""],
  ])("writes %j as %j", (cell, expected) => {
    expect(cellText(cell)).toBe(expected);
  });

  it("holds no cell that a spreadsheet runs, whatever the pilot wrote", () => {
    const hostile = [...ATTACK_STRINGS, "=HYPERLINK(1)", "@SUM(A1)", "+1", "-2+3", "\t=1", "\r=1"];
    const entries = hostile.map((text, at) =>
      entryWith({ flight: `f${at}`, given: { note: text, pack: text, ambientC: -5 } }),
    );
    const [head, ...rows] = cellsOf(flightsCsv(entries));
    expect(rows).toHaveLength(hostile.length);
    for (const row of rows) {
      expect(row).toHaveLength(head?.length ?? 0);
      for (const cell of row)
        expect(/^[^=+\-@\t\r\0]/.test(cell) || cell === "" || NUMBER.test(cell)).toBe(true);
    }
    const at = head?.indexOf("ambient (degC)") ?? -1;
    expect(rows[0]?.[at]).toBe("-5");
  });
});
