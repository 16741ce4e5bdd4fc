import { readdirSync, readFileSync } from "node:fs";
import { resolve } from "node:path";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { buildTable } from "../../../src/log/reading/buildTable.ts";
import { CleanRows } from "../../../src/log/reading/cleanRows.ts";
import { findEncoding } from "../../../src/log/reading/encoding.ts";
import { headLinesOf } from "../../../src/log/reading/head.ts";
import { findLayout } from "../../../src/log/reading/layout.ts";
import { strictNumber } from "../../../src/log/reading/strictNumber.ts";
import { sharedFolder } from "../../support/shared.ts";

const SEED = 20_261_125;
const ROOT = resolve(import.meta.dirname, "../../..");

/** Everything a table says, or what was said in its place; -0 and NaN told apart from 0. */
function tableOf(bytes: Uint8Array, usesCleanRows: boolean): unknown {
  const decoding = findEncoding(bytes);
  if (typeof decoding === "string") return decoding;
  const layout = findLayout(headLinesOf(bytes, decoding).lines, {
    delimiter: null,
    decimalMark: null,
    isByNumber: false,
  });
  if ("problem" in layout) return layout;
  const built = buildTable(bytes, decoding, layout, usesCleanRows);
  if ("code" in built) return built;
  const { rows, dataLines, lines, columns, names, defects, mark } = built.table;
  const lineOfRow = Array.from({ length: rows }, (_, row) => [lines.lineOfRow(row), lines.ordinalOfRow(row)]);
  const cells = columns.map(({ values, dateCodes, ...facts }) => ({
    ...facts,
    values: bitsOf(values.subarray(0, rows)),
    dates: dateCodes === null ? null : bitsOf(dateCodes.subarray(0, rows)),
  }));
  return { rows, dataLines, lineOfRow, cells, names, defects, mark, layout: built.layout };
}

function bitsOf(values: Float64Array): string {
  return Buffer.from(new Float64Array(values).buffer).toString("base64");
}

function expectSame(bytes: Uint8Array): void {
  expect(tableOf(bytes, true)).toEqual(tableOf(bytes, false));
}

function logsUnder(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".csv"))
    .map((name) => resolve(folder, name));
}

describe("lines of plain numbers read straight from bytes", () => {
  const folders = [resolve(ROOT, "fixtures"), resolve(ROOT, "test/golden")];
  it.each(folders.flatMap(logsUnder))("give the table that papaparse gives: %s", (file) => {
    expectSame(new Uint8Array(readFileSync(file)));
  });

  const shared = sharedFolder();
  const corpus =
    shared === null ? [] : ["corpus", "flights"].flatMap((name) => logsUnder(resolve(shared, name)));
  it.skipIf(shared === null)(
    `and so do ${corpus.length} logs of the shared folder, where it is present`,
    () => {
      for (const file of corpus) expectSame(new Uint8Array(readFileSync(file)));
    },
  );

  it("are taken up to the first that holds anything else", () => {
    const text = "1.5,-2,\n 3 ,.5,-0\n4,5,6e1\n7,8,9\n";
    const rows = CleanRows.of(3, ",")!;
    expect(rows.scan(new TextEncoder().encode(text), 0, ".")).toBe(2);
    expect([0, 1, 2].map((cell) => [...rows.column(cell, 2)])).toEqual([
      [1.5, 3],
      [-2, 0.5],
      [Number.NaN, -0],
    ]);
    expect(rows.hasBlanks).toBe(true);
    expect(text.slice(rows.end)).toBe("4,5,6e1\n7,8,9\n");
  });

  it.each([
    ["999999999", 1],
    ["1000000000", 1],
    ["4294967297", 1],
    ["123456789012345", 1],
    ["0.00000000012345", 1],
    ["12345678.9012345", 1],
    ["-98765432.1098765", 1],
    ["5.", 1],
    ["-.5", 1],
    ["000000000000001", 1],
    ["1234567890123456", 0],
    [".", 0],
    ["-", 0],
    ["1.2.3", 0],
    ["1-2", 0],
    ["--1", 0],
  ])("read %s as the text is read, or leave it alone", (cell, read) => {
    const rows = CleanRows.of(2, ",")!;
    expect(rows.scan(new TextEncoder().encode(`${cell},7\n`), 0, ".")).toBe(read);
    if (read === 1) expect(rows.column(0, 1)[0]).toBe(strictNumber(cell, "."));
  });
});

/** Longer than the first stretch of text, so that the rows behind it are read from bytes. */
function logOf(delimiter: string, mark: string, lineEnd: string): string {
  const rows = Array.from({ length: 400 }, (_, row) =>
    [
      (row / 5).toFixed(1),
      (33 - row / 100).toFixed(2),
      (row % 37) - 1,
      `${-row}`,
      " 21.50",
      "",
      "0.0",
      row * 7,
    ]
      .map((cell) => String(cell).replace(".", mark))
      .join(delimiter),
  );
  const header = ["Time (s)", "Voltage (V)", "Current (A)", "Altitude (m)", "T", "Empty", "Zero", "rpm"];
  return [header.join(delimiter), ...rows, ""].join(lineEnd);
}

const STYLES = [
  [",", ".", "\n"],
  [";", ",", "\r\n"],
  ["\t", ".", "\n"],
  ["|", ",", "\r\n"],
  [",", ".", "\r"],
] as const;
const BASES = STYLES.map(([delimiter, mark, lineEnd]) => logOf(delimiter, mark, lineEnd));
const PIECES = [
  ...[",", ";", "\t", "|", " ", "\n", "\r", "\r\n", '"', "#", "//", "%", "-", "+", ".", "e5", "''"],
  ...["0", "12345678901234567", "1,5", "1.5", "1,234.5", "NaN", "-.", "10:00:01", "2026-05-01", "\u0000"],
  ...["\ufeff", "\ufffd", "\u00a0", "°C", "\u2212", "off", "Time (s)", '"a\nb"', "\n\n", ",,,,,,,\n"],
];

describe("logs with something odd in them", () => {
  const change = fc.record({
    at: fc.double({ min: 0, max: 1, noNaN: true }),
    cut: fc.integer({ min: 0, max: 6 }),
    piece: fc.constantFrom(...PIECES),
  });
  it("give the same table both ways", () => {
    const changed = fc.tuple(fc.constantFrom(...BASES), fc.array(change, { minLength: 1, maxLength: 5 }));
    fc.assert(
      fc.property(changed, ([base, changes]) => {
        let text = base;
        for (const { at, cut, piece } of changes) {
          const place = Math.floor(at * text.length);
          text = text.slice(0, place) + piece + text.slice(place + cut);
        }
        expectSame(new TextEncoder().encode(text));
      }),
      { seed: SEED, numRuns: 150 },
    );
  });
});
