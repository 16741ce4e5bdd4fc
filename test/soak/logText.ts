import type { WholeRow } from "./flightNumbers.ts";

export type ColumnName = "time" | "rpm" | "celsius" | "volts" | "amps";
export type Mark = "." | ",";

export const PLAIN_HEADERS: Readonly<Record<ColumnName, string>> = {
  time: "time_s",
  rpm: "rpm",
  celsius: "esc_temp_c",
  volts: "pack_v",
  amps: "current_a",
};
export const PLAIN_ORDER: readonly ColumnName[] = ["time", "rpm", "celsius", "volts", "amps"];

/** A whole number of `places` decimals as text. */
export function decimalText(whole: number, places: number, mark: Mark = "."): string {
  const digits = String(Math.abs(whole)).padStart(places + 1, "0");
  const sign = whole < 0 ? "-" : "";
  if (places === 0) return sign + digits;
  return `${sign}${digits.slice(0, -places)}${mark}${digits.slice(-places)}`;
}

/** The cells of one row in the plain units. */
export function cellOf(row: WholeRow, column: ColumnName, mark: Mark = "."): string {
  switch (column) {
    case "time":
      return decimalText(row.ms, 3, mark);
    case "rpm":
      return String(row.rpm);
    case "celsius":
      return decimalText(row.tenthsC, 1, mark);
    case "volts":
      return decimalText(row.millivolts / 10, 2, mark);
    case "amps":
      return decimalText(row.milliamps / 100, 1, mark);
  }
}

/** Header and rows of the plain log, each a list of cells. */
export function plainTable(rows: readonly WholeRow[], mark: Mark = "."): string[][] {
  return [
    PLAIN_ORDER.map((column) => PLAIN_HEADERS[column]),
    ...rows.map((row) => PLAIN_ORDER.map((column) => cellOf(row, column, mark))),
  ];
}

export function textOf(table: readonly (readonly string[])[], delimiter = ",", newline = "\n"): string {
  return table.map((cells) => cells.join(delimiter) + newline).join("");
}

export function bytesOf(text: string): Uint8Array {
  return new TextEncoder().encode(text);
}
