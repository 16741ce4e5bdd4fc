import { cellsOfLine, countOf, isBlank, isComment, isNumber, isValue, isWord } from "./cells.ts";
import type { DecimalMark } from "./contract.ts";
import { findDecimalMark } from "./decimalMark.ts";
import { delimiterFromText, findDelimiter, hintedDelimiter } from "./delimiter.ts";
import { joinPattern } from "./joinedCells.ts";
import { isUnitText } from "./units.ts";

/** How the lines of a file are cut and named. */
export interface Layout {
  readonly delimiter: string;
  readonly mark: "." | ",";
  /** True when a cell of the head proves the mark, or the user gave it. */
  readonly isMarkProven: boolean;
  readonly isMarkGiven: boolean;
  /** Trimmed names, one per column; "" where the header has none. */
  readonly header: readonly string[];
  /** Cells of a units row under the header, or null. */
  readonly units: readonly string[] | null;
  /** 1-based; 0 when the file has no header line. */
  readonly headerLine: number;
  /** 1-based line at which rows may begin. */
  readonly bodyLine: number;
  /** Non-blank lines before the header. */
  readonly preamble: readonly string[];
  /** Per column, true where an unquoted decimal comma cut the number in two; null for whole cells. */
  readonly joins: readonly boolean[] | null;
  /** Numbers that a row usually holds. */
  readonly numbersOfRow: number;
}

/** Why the head of a file cannot be laid out. `preview` cells are those of the chosen delimiter. */
export interface LayoutProblem {
  readonly problem: "noRows" | "decimalComma" | "headerWidth" | "noPattern";
  readonly delimiter: string;
  readonly mark: "." | ",";
  readonly header: readonly string[];
  readonly headerLine: number;
  /** Most common cell count of the rows. */
  readonly width: number;
}

export interface LayoutAnswers {
  readonly delimiter: string | null;
  readonly decimalMark: DecimalMark | null;
  /** True when columns are named by number, so that a header that does not fit is no obstacle. */
  readonly isByNumber: boolean;
}

interface HeadLine {
  readonly line: number;
  readonly text: string;
  readonly cells: readonly string[];
  readonly values: number;
}

/** Finds delimiter, decimal mark, header, units row and first row in the first lines of a file. */
export function findLayout(lines: readonly string[], answers: LayoutAnswers): Layout | LayoutProblem {
  const hint = hintedDelimiter(lines[0]!);
  const skipped = hint === null ? 0 : 1;
  const given = answers.delimiter === null ? hint : delimiterFromText(answers.delimiter);
  const delimiter = given ?? findDelimiter(lines.slice(skipped));
  const head = headLines(lines, skipped, delimiter);
  const rows = commonRows(head);
  const first = rows[0];
  if (first === undefined) return noRows(head, delimiter);
  const mark = markOf(rows, answers, delimiter);
  const above = head.filter((each) => each.line < first.line);
  const named = findHeader(above, first.cells.length, delimiter);
  const preamble = above.filter((each) => each.line < (named?.line ?? first.line)).map((each) => each.text);
  const numbersOfRow = usualNumbers(rows);
  const shared = { delimiter, ...mark, headerLine: named?.line ?? 0, preamble, numbersOfRow };
  const width = first.cells.length;
  if (named === null) {
    return { ...shared, header: first.cells.map(() => ""), units: null, bodyLine: first.line, joins: null };
  }
  const bodyLine = (named.units === null ? named.line : named.unitsLine) + 1;
  const laidOut = { ...shared, header: named.cells, units: named.units, bodyLine, joins: null };
  const fits = fitWidth(named.cells, rows, width);
  if (fits !== null) return { ...laidOut, header: fits };
  const problem = { delimiter, mark: mark.mark, header: named.cells, headerLine: named.line, width };
  if (isDecimalComma(rows, named.cells.length, delimiter)) {
    const isSettled = answers.decimalMark === "comma" && given === ",";
    if (!isSettled) return { problem: "decimalComma", ...problem };
    const joins = joinPattern(
      rows.map((row) => row.cells),
      named.cells.length,
    );
    return joins === null ? { problem: "noPattern", ...problem } : { ...laidOut, mark: ",", joins };
  }
  if (!answers.isByNumber) return { problem: "headerWidth", ...problem };
  return { ...laidOut, header: Array.from({ length: width }, (_, index) => named.cells[index] ?? "") };
}

function headLines(lines: readonly string[], skipped: number, delimiter: string): HeadLine[] {
  const head: HeadLine[] = [];
  lines.forEach((text, index) => {
    if (index < skipped || isBlank(text)) return;
    const bare = isComment(text) ? text.replace(/^\s*(?:#|\/\/|%)+\s?/, "") : text;
    const cells = cellsOfLine(bare, delimiter);
    head.push({ line: index + 1, text, cells, values: isComment(text) ? 0 : countOf(cells, isValue) });
  });
  return head;
}

/** Lines of one width that are rows beyond doubt: then the first such width counts, as logs may change later. */
const SURE_WIDTH = 3;
const SURE_LINES = 3;
const SURE_SHARE = 0.6;

/** The rows of the head: of the first width that surely has rows, else of the commonest width. */
function commonRows(head: readonly HeadLine[]): HeadLine[] {
  const byWidth = new Map<number, HeadLine[]>();
  for (const line of head) {
    if (line.values === 0) continue;
    const group = byWidth.get(line.cells.length) ?? [];
    group.push(line);
    byWidth.set(line.cells.length, group);
  }
  const groups = [...byWidth.values()];
  const common =
    groups.find(areSurelyRows) ??
    groups.reduce((best, each) => (each.length > best.length ? each : best), []);
  const counts = common.map((each) => each.values).sort((a, b) => a - b);
  const usual = counts[Math.floor(counts.length / 2)] ?? 0;
  return common.filter((each) => each.values >= Math.max(1, usual / 2));
}

function areSurelyRows(lines: readonly HeadLine[]): boolean {
  const rows = lines.filter((line) => line.values >= SURE_SHARE * countOf(line.cells, (cell) => cell !== ""));
  return rows.length >= SURE_LINES && lines[0]!.cells.length >= SURE_WIDTH && rows.length * 2 >= lines.length;
}

function usualNumbers(rows: readonly HeadLine[]): number {
  const counts = rows.map((row) => countOf(row.cells, isNumber)).sort((a, b) => a - b);
  return counts[Math.floor(counts.length / 2)]!;
}

function noRows(head: readonly HeadLine[], delimiter: string): LayoutProblem {
  const widest = head.reduce<HeadLine | null>((best, each) => {
    return best === null || each.cells.length > best.cells.length ? each : best;
  }, null);
  const cells = widest?.cells ?? [];
  return {
    problem: "noRows",
    delimiter,
    mark: ".",
    header: cells,
    headerLine: widest?.line ?? 0,
    width: cells.length,
  };
}

function markOf(rows: readonly HeadLine[], answers: LayoutAnswers, delimiter: string) {
  if (answers.decimalMark !== null) {
    const mark: "." | "," = answers.decimalMark === "comma" ? "," : ".";
    return { mark, isMarkProven: true, isMarkGiven: true };
  }
  const found = findDecimalMark(rows.map((row) => row.cells));
  const isUnquotedComma = delimiter === "," && found.mark === "," && !found.isProven;
  return {
    mark: isUnquotedComma ? ("." as const) : found.mark,
    isMarkProven: found.isProven,
    isMarkGiven: false,
  };
}

interface NamedColumns {
  readonly line: number;
  readonly cells: readonly string[];
  readonly units: readonly string[] | null;
  readonly unitsLine: number;
}

/** The last line of words above the first row; a line of units under it is the units row. */
function findHeader(above: readonly HeadLine[], width: number, delimiter: string): NamedColumns | null {
  const candidates = above.filter((each) => isHeaderLike(each, width));
  const last = candidates.at(-1);
  if (last === undefined) return null;
  const before = candidates.at(-2);
  if (
    before !== undefined &&
    isUnitsRow(last.cells) &&
    Math.abs(before.cells.length - last.cells.length) <= 1
  ) {
    return { line: before.line, cells: before.cells, units: last.cells, unitsLine: last.line };
  }
  const cells = delimiter === " " && last.cells.length !== width ? wideGaps(last, width) : last.cells;
  return { line: last.line, cells, units: null, unitsLine: last.line };
}

/** Names that hold blanks, parted by two or more. */
function wideGaps(line: HeadLine, width: number): readonly string[] {
  const cells = line.text.trim().split(/\s{2,}|\t/);
  return cells.length === width ? cells : line.cells;
}

function isHeaderLike(line: HeadLine, width: number): boolean {
  const words = countOf(line.cells, isWord);
  const isWideEnough = line.cells.length >= width / 2 && (width === 1 || line.cells.length > 1);
  if (isComment(line.text) && line.cells.length !== width) return false;
  return words > 0 && countOf(line.cells, isNumber) === 0 && isWideEnough;
}

function isUnitsRow(cells: readonly string[]): boolean {
  const filled = cells.filter((cell) => cell !== "" && cell !== "-");
  return filled.length > 0 && countOf(filled, isUnitText) >= filled.length / 2;
}

/** Header cells matched to the rows; blank cells at the end of either do not count. Null: they do not fit. */
function fitWidth(
  header: readonly string[],
  rows: readonly HeadLine[],
  width: number,
): readonly string[] | null {
  if (header.length === width) return header;
  const named = [...header];
  while (named.length > 1 && named.at(-1) === "") named.pop();
  const isTailBlank = rows.every((row) => row.cells.slice(named.length).every((cell) => cell === ""));
  if (named.length < width && isTailBlank) return named;
  return named.length === width ? named : null;
}

/** More cells than names, and in nearly every row nothing but whole numbers: a decimal comma cut them. */
function isDecimalComma(rows: readonly HeadLine[], names: number, delimiter: string): boolean {
  const width = rows[0]!.cells.length;
  if (delimiter !== "," || width <= names || width > 2 * names) return false;
  const whole = rows.filter(
    (row) => countOf(row.cells, (cell) => /^[+\-\u2212]?\d+$/.test(cell)) >= width * 0.6,
  );
  return (
    whole.length > rows.length * 0.8 && !rows.some((row) => row.cells.some((cell) => /^\d+\.\d+$/.test(cell)))
  );
}
