import { readClock } from "./clockText.ts";
import { isMissingWord } from "./missingWords.ts";
import { cellsOfRecords } from "./papaparse.ts";
import { quoteState, tidyLine } from "./quotes.ts";
import { strictNumber } from "./strictNumber.ts";

const COMMENT = /^\s{0,20}(?:#|\/\/|%)/;

/** Trimmed cells of one line; a line whose quotes do not close is cut at every delimiter. */
export function cellsOfLine(line: string, delimiter: string): string[] {
  const tidy = tidyLine(line, delimiter);
  const isQuoted = tidy.includes('"');
  const isPlain = !isQuoted || quoteState(tidy, delimiter, false) !== "closed";
  const cells = isPlain ? tidy.split(delimiter) : cellsOfRecords([tidy], delimiter)[0]!;
  return cells.map((cell) => cell.trim());
}

export function isComment(line: string): boolean {
  return COMMENT.test(line);
}

export function isBlank(line: string): boolean {
  return line === "" || line.trim() === "";
}

/** A number with either mark, or a clock or date. */
export function isValue(cell: string): boolean {
  return isNumber(cell) || readClock(cell) !== null;
}

export function isNumber(cell: string): boolean {
  return !Number.isNaN(strictNumber(cell, ".")) || !Number.isNaN(strictNumber(cell, ","));
}

/** Words that are neither a value nor a word for missing. */
export function isWord(cell: string): boolean {
  return !isValue(cell) && !isMissingWord(cell);
}

export function countOf(cells: readonly string[], is: (cell: string) => boolean): number {
  let count = 0;
  for (const cell of cells) if (is(cell)) count++;
  return count;
}
