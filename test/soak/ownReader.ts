import type { Dialect } from "../../src/log/reading/index.ts";

const DECODERS: Readonly<Record<Dialect["encoding"], string>> = {
  "utf-8": "utf-8",
  "utf-8-bom": "utf-8",
  "utf-16le": "utf-16le",
  "utf-16be": "utf-16be",
  "windows-1252": "windows-1252",
};

/** Lines of a file by a reader of its own: line 1 is at index 0. */
export function linesOf(bytes: Uint8Array, encoding: Dialect["encoding"]): readonly string[] {
  const text = new TextDecoder(DECODERS[encoding], { ignoreBOM: true }).decode(bytes);
  return text.split(/\r\r\n|\r\n|\n|\r/).map((line) => line.replace(/^\ufeff/, ""));
}

/** Cells of one line: trimmed; runs of spaces are one delimiter; quoted cells without their quotes. */
export function cellsOf(line: string, delimiter: string): readonly string[] {
  if (delimiter === " ") return line.trim().split(/\s+/);
  const cells = line.split(delimiter).map((cell) => cell.trim());
  return cells.map((cell) => (/^".*"$/.test(cell) ? cell.slice(1, -1).trim() : cell));
}

const PLAIN = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/i;
const GROUPS = /^[+-]?\d{1,3}(?:([., '\u00a0\u2009\u202f\u2019])\d{3})(?:\1\d{3})*(?:[.,]\d*)?$/;

/** Every number that a careful reader may take a cell for: with either decimal mark, and with digit groups. */
export function readingsOf(cell: string): readonly number[] {
  const signed = cell.replace(/^[\u2212\u2010\u2011\u2013\ufe63\uff0d]/, "-");
  const texts = [signed, signed.replace(",", ".")];
  const group = GROUPS.exec(signed)?.[1];
  if (group !== undefined) texts.push(signed.replaceAll(group, "").replace(",", "."));
  return texts.filter((text) => PLAIN.test(text)).map(Number);
}
