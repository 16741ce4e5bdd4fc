import { channelFacts } from "../../src/base/channels/index.ts";
import type { ColumnChoice, ReadLog } from "../../src/log/reading/index.ts";
import { cellsOf, linesOf, readingsOf } from "./ownReader.ts";

/** Value in the channel's unit = cell * factor + offset. */
const SCALES: Readonly<Record<string, readonly [number, number]>> = {
  mV: [1e-3, 0],
  cV: [1e-2, 0],
  dV: [1e-1, 0],
  mA: [1e-3, 0],
  cA: [1e-2, 0],
  dA: [1e-1, 0],
  krpm: [1000, 0],
  "100 rev/min": [100, 0],
  Hz: [60, 0],
  "rad/s": [30 / Math.PI, 0],
  degF: [1 / 1.8, -32 / 1.8],
  K: [1, -273.15],
  "0.1 degC": [0.1, 0],
  "0.01 degC": [0.01, 0],
};

/**
 * Every number the reader hands on must stand in its line and column of the file: a value that no careful
 * reading of that cell gives is a silent wrong number. Returns the first such, or null.
 */
export function inventedNumber(bytes: Uint8Array, log: ReadLog): string | null {
  const lines = linesOf(bytes, log.dialect.encoding);
  const isMoved = log.notices.some((notice) => notice.code === "columns-changed");
  const used = log.columns.filter((column) => column.channel !== null && log.channels.has(column.channel));
  for (let row = 0; row < log.rows; row++) {
    const at = log.lineOfRow(row);
    const line = lines[at - 1];
    if (line === undefined) return `row ${row} says line ${at}, but the file has ${lines.length}`;
    const cells = cellsOf(line, log.dialect.delimiter);
    if (line.includes('"') || isMoved) continue;
    for (const column of used) {
      const wrong = wrongCell(log, column, row, cells[column.column - 1]);
      if (wrong !== null) return `line ${at}: ${line.slice(0, 120)}: ${wrong}`;
    }
  }
  return null;
}

function wrongCell(log: ReadLog, column: ColumnChoice, row: number, cell: string | undefined): string | null {
  const channel = column.channel!;
  const value = log.channels.get(channel)![row]!;
  if (Number.isNaN(value)) return null;
  if (cell === undefined) return `${channel} is ${value}, but the line has no such cell`;
  const isOwnUnit = column.unit === null || column.unit === channelFacts(channel).unit;
  const scale = isOwnUnit ? ([1, 0] as const) : SCALES[column.unit!];
  if (scale === undefined) return null;
  const near = (each: number) =>
    Math.abs(each * scale[0] + scale[1] - value) <= 1e-9 * Math.max(1, Math.abs(value));
  return readingsOf(cell).some(near) ? null : `${channel} is ${value}, the cell is ${JSON.stringify(cell)}`;
}
