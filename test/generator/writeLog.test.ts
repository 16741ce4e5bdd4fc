import { describe, expect, it } from "vitest";
import { LOG_STYLES, simulateFlight, TERN, usualSpec, writeLog } from "./index.ts";

const CELLS = [1, 2, 3, 4, 5, 6, 7, 8].map((cell) => `cellVoltage${cell}` as const);
const { logged } = simulateFlight(
  usualSpec(5, TERN, {
    script: { flightS: 90 },
    sensors: { rateHz: 5, channels: ["packVoltage", "current", "controllerTemperature", ...CELLS] },
  }),
);

function linesOf(key: keyof typeof LOG_STYLES): string[] {
  const style = LOG_STYLES[key];
  const label = style.encoding === "utf-8-bom" ? "utf-8" : style.encoding;
  return new TextDecoder(label).decode(writeLog(logged, style)).split(style.newline);
}

describe("log styles", () => {
  it("are eleven with a name each", () => {
    const names = Object.values(LOG_STYLES).map(({ name }) => name);
    expect(new Set(names).size).toBe(11);
  });

  it.each(Object.keys(LOG_STYLES) as (keyof typeof LOG_STYLES)[])("%s writes every row once", (key) => {
    const style = LOG_STYLES[key];
    const lines = linesOf(key);
    const before = style.preamble.length + 1 + (style.hasUnitsRow ? 1 : 0);
    expect(lines).toHaveLength(before + logged.rows + 1);
    expect(lines.at(-1)).toBe("");
  });

  it("keep the numbers through units and decimal marks", () => {
    const row = 200;
    const volts = logged.channels.get("packVoltage")![row]!;
    const celsius = logged.channels.get("controllerTemperature")![row]!;
    const cellsOf = (key: keyof typeof LOG_STYLES, delimiter: string) =>
      linesOf(key)
        [row + 1]!.split(delimiter)
        .map((cell) => Number(cell.replace(",", ".")));
    expect(cellsOf("symbolsWithDecimalComma", ";")[1]).toBeCloseTo(volts, 6);
    expect(cellsOf("epochInMilliUnits", ",")[1]).toBeCloseTo(1000 * volts, 6);
    expect((cellsOf("pipesInFahrenheit", "|")[3]! - 32) / 1.8).toBeCloseTo(celsius, 6);
    const cells = cellsOf("cellColumns", ",").slice(1, 9);
    expect(cells.reduce((sum, cell) => sum + cell, 0)).toBeCloseTo(volts, 1);
  });
});
