import { describe, expect, it } from "vitest";
import {
  codesOf,
  FLIGHT,
  type FlightRow,
  logOf,
  logText,
  noticesOf,
  outcomeOf,
  questionOf,
} from "./support.ts";

const CELLS = [1, 2, 3, 4, 5, 6];
/** Volts of one cell in a row of the invented flight, each cell a little apart. */
const cellV = (row: FlightRow, cell: number): number => (row.volts / 8) * (1 + (cell - 3.5) / 500);
const packV = (row: FlightRow): number => CELLS.reduce((sum, cell) => sum + cellV(row, cell), 0);
const HEADER = `Time (s),Current (A),${CELLS.map((cell) => `Cell ${cell} (V)`).join(",")}`;

function cellLog(isLost: (row: FlightRow, cell: number) => boolean): string {
  return logText(HEADER, (row) => [
    row.s,
    row.amps,
    ...CELLS.map((cell) => (isLost(row, cell) ? "0.000" : cellV(row, cell).toFixed(4))),
  ]);
}

describe("leads of single cells", () => {
  it("a cell that drops out in flight stays in the pack's sum, and that is said", () => {
    const log = logOf(cellLog((row, cell) => cell === 4 && row.s >= 20));
    FLIGHT.forEach((row, at) => {
      expect(log.channels.get("packVoltage")![at]).toBeCloseTo(packV(row), 2);
    });
    const notice = log.notices.find(({ code }) => code === "cell-lead-lost");
    expect(notice).toMatchObject({ severity: "warning", count: 200, lines: [102] });
    expect(notice?.text).toMatch(/^Cell 4 shows no volts in 200 rows from line 102/);
  });

  it("two cells that drop out at once leave the pack voltage missing", () => {
    const log = logOf(cellLog((row, cell) => (cell === 4 || cell === 2) && row.s >= 20));
    expect(log.channels.get("packVoltage")![99]).toBeGreaterThan(20);
    expect(log.channels.get("packVoltage")![100]).toBeNaN();
  });

  it("a lead open from the start asks for the cells, and the answer gives the pack voltage", () => {
    const text = cellLog((_, cell) => cell === 4);
    const question = questionOf(text);
    expect(question.text).toMatch(/^5 of 6 cell columns show volts; cell 4 shows 0/);
    expect(question.options).toEqual(["--cells 6", "--cells 5"]);
    const six = logOf(text, { cells: 6 });
    expect(six.channels.get("packVoltage")![0]).toBeCloseTo(packV(FLIGHT[0]!), 1);
    expect(codesOf(outcomeOf(text, { cells: 6 }))).toContain("cell-lead-lost");
    const five = logOf(text, { cells: 5 });
    expect(five.channels.get("packVoltage")![0]).toBeCloseTo((packV(FLIGHT[0]!) * 5) / 6, 1);
    expect(noticesOf(outcomeOf(text, { cells: 5 })).map(({ code }) => code)).not.toContain("cell-lead-lost");
  });
});
