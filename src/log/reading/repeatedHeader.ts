import { countOf, isWord } from "./cells.ts";

/** True if both lists hold the same names in the same order, blanks and case apart. */
export function sameNames(cells: readonly string[], names: readonly string[]): boolean {
  if (cells.length !== names.length) return false;
  return cells.every((cell, index) => cell.toLowerCase() === names[index]!.toLowerCase());
}

/** True for a line of words of which at least half, and two or more, are names of columns. */
export function startsNewHeader(cells: readonly string[], names: readonly string[]): boolean {
  const first = cells[0]!;
  const code = first.charCodeAt(0);
  const isDigit = code >= 0x30 && code <= 0x39;
  if (isDigit || (first === "" && cells.length > 1 && names[0] !== "")) return false;
  let known = 0;
  for (const cell of cells) if (cell !== "" && names.includes(cell)) known++;
  const filled = cells.filter((cell) => cell !== "").length;
  const needed = names.length === 1 ? 1 : 2;
  return known >= needed && known * 2 >= filled && countOf(cells, isWord) * 2 >= filled;
}
