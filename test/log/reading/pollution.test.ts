import { describe, expect, it } from "vitest";
import { FLIGHT, logOf, logText } from "./support.ts";

const CLEAN = logText("time_s,rpm,esc_temp_c,pack_v,current_a", (row) => [
  row.s,
  row.rpm,
  row.celsius,
  row.volts,
  row.amps,
]).split("\n");
const CHANNELS = ["shaftSpeed", "controllerTemperature", "packVoltage", "current"] as const;

/** One defect in one cell of one row. */
const DEFECTS: Readonly<Record<string, (cell: string) => string>> = {
  "a separator too many": (cell) => `${cell},`,
  "an opening quote": (cell) => `"${cell}`,
  "a closing quote": (cell) => `${cell}"`,
  "another delimiter": (cell) => `${cell};`,
  "a word": () => "ERR",
  "a letter in the number": (cell) => `${cell}O`,
  "a date": () => "24.8.88",
  "a clock": () => "10:05:07",
  "a decimal comma": (cell) => `${cell},5`,
};

function valuesOf(text: string) {
  const log = logOf(text);
  const byLine = new Map<number, readonly number[]>();
  for (let row = 0; row < log.rows; row++) {
    const values = CHANNELS.map((channel) => log.channels.get(channel)![row]!);
    byLine.set(log.lineOfRow(row), [log.timeS[row]!, ...values]);
  }
  return { log, byLine };
}

const truth = valuesOf(CLEAN.join("\n")).byLine;

describe("one defect in one row", () => {
  it.each(Object.entries(DEFECTS))("%s costs at most that row and is never silent", (_, spoil) => {
    for (let row = 2; row < FLIGHT.length; row += 23) {
      for (let cell = 0; cell < 5; cell++) {
        const cells = CLEAN[row]!.split(",");
        cells[cell] = spoil(cells[cell]!);
        const line = row + 1;
        const { log, byLine } = valuesOf(
          [...CLEAN.slice(0, row), cells.join(","), ...CLEAN.slice(row + 1)].join("\n"),
        );
        const where = `line ${line}: ${cells.join(",")}`;
        for (const [each, values] of truth) {
          if (each !== line) expect(byLine.get(each), where).toEqual(values);
        }
        byLine.get(line)?.forEach((value, at) => {
          if (!Number.isNaN(value)) expect(value, where).toBe(truth.get(line)![at]);
        });
        const warned = log.notices.some(
          (notice) => notice.severity === "warning" && notice.lines?.includes(line),
        );
        expect(warned, where).toBe(true);
      }
    }
  });

  it.each([0x00, 0xff])("a hole of 512 bytes of %i costs the rows it touches and no other", (fill) => {
    const clean = new TextEncoder().encode(CLEAN.join("\n"));
    const known = new Set([...truth.values()].map((values) => values.slice(1).join(" ")));
    for (let at = 512; at + 512 < clean.length; at += 512) {
      const bytes = clean.slice();
      bytes.fill(fill, at, at + 512);
      const log = logOf(bytes);
      expect(log.rows, `hole at ${at}`).toBeGreaterThan(FLIGHT.length - 60);
      for (let row = 0; row < log.rows; row++) {
        const values = CHANNELS.map((channel) => log.channels.get(channel)![row]!);
        if (!values.some(Number.isNaN))
          expect(known, `hole at ${at}, row ${row}`).toContain(values.join(" "));
      }
      expect(log.notices.some((notice) => notice.code === "rows-damaged")).toBe(true);
    }
  });
});
