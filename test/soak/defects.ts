import type { Random } from "../generator/random.ts";
import { exactSums, type Sums } from "./exactSums.ts";
import { flightNumbers, type WholeRow } from "./flightNumbers.ts";
import { bytesOf, PLAIN_ORDER, plainTable, textOf } from "./logText.ts";
import { readSums } from "./readSums.ts";

/** A plain log about to be spoiled: lines of cells (0 is the header) and where the defect goes. */
interface Spot {
  readonly table: string[][];
  readonly rows: readonly WholeRow[];
  /** Line and cell that the defect is in; the line is never the header, the first two rows or the last. */
  readonly line: number;
  readonly cell: number;
  readonly random: Random;
}

/** What must come of it: "refusal", "question", "same" sums, or that one row's cells are at most missing and told. */
type Verdict = "refusal" | "question" | "same" | "noticed";

interface Defect {
  readonly verdict: Verdict;
  /** The file with the defect. */
  readonly spoil: (spot: Spot) => string | Uint8Array;
}

const SEPARATOR = ",";

function inCell(change: (cell: string, spot: Spot) => string): Defect["spoil"] {
  return (spot) => {
    const cells = [...spot.table[spot.line]!];
    cells[spot.cell] = change(cells[spot.cell]!, spot);
    return textOf(spot.table.with(spot.line, cells));
  };
}

function inLine(change: (line: string, spot: Spot) => string): Defect["spoil"] {
  return (spot) => {
    const lines = spot.table.map((cells) => cells.join(SEPARATOR));
    return `${lines.with(spot.line, change(lines[spot.line]!, spot)).join("\n")}\n`;
  };
}

const inText = (change: (text: string, spot: Spot) => string): Defect["spoil"] => {
  return (spot) => change(textOf(spot.table), spot);
};

const noticed = (spoil: Defect["spoil"]): Defect => ({ verdict: "noticed", spoil });
const same = (spoil: Defect["spoil"]): Defect => ({ verdict: "same", spoil });
const refusal = (spoil: Defect["spoil"]): Defect => ({ verdict: "refusal", spoil });
const question = (spoil: Defect["spoil"]): Defect => ({ verdict: "question", spoil });

function withoutColumn(column: number): Defect["spoil"] {
  return ({ table }) => textOf(table.map((cells) => cells.toSpliced(column, 1)));
}

/** One defect each, with a right answer that is known beforehand. */
export const DEFECTS: Readonly<Record<string, Defect>> = {
  "a separator too many": noticed(inCell((cell) => `${cell},`)),
  "a separator lost": noticed(inLine((line) => line.replace(SEPARATOR, ""))),
  "an opening quote": noticed(inCell((cell) => `"${cell}`)),
  "a closing quote": noticed(inCell((cell) => `${cell}"`)),
  "a lone quote": noticed(inCell(() => '"')),
  "another delimiter": noticed(inCell((cell) => `${cell};`)),
  "a word": noticed(inCell((_, { random }) => random.pick(["ERR", "fail", "sync lost", "on"]))),
  "a word for missing": noticed(
    inCell((_, { random }) => random.pick(["NaN", "N/A", "null", "--", "#VALUE!"])),
  ),
  "a blank cell": noticed(inCell(() => "")),
  "a letter in the number": noticed(inCell((cell) => cell.replace(/\d$/, "O"))),
  "two points": noticed(inCell((cell) => `${cell}.5.7`)),
  "two signs": noticed(inCell((cell) => `--${cell}`)),
  "a hexadecimal number": noticed(inCell(() => "0x1b1f")),
  "an infinite number": noticed(inCell((_, { random }) => random.pick(["Infinity", "-inf", "1e999"]))),
  "a formula": noticed(inCell((cell) => `=${cell}+1`)),
  "a date": noticed(inCell(() => "24.8.88")),
  "a byte that is no character": noticed(inCell((cell) => `${cell}\ufffd`)),
  "a control character": noticed(inCell((cell) => `${cell}\u001b[2J`)),
  "a direction mark": noticed(inCell((cell) => `\u202e${cell}`)),
  "an erased stretch": noticed(inLine((line) => line.slice(0, 4) + "\0".repeat(line.length - 4))),
  "a row cut in two": noticed(inLine((line) => `${line.slice(0, 6)}\n${line.slice(6)}`)),
  "a row cut short": noticed(inLine((line) => line.split(SEPARATOR).slice(0, -1).join(SEPARATOR))),
  "two rows in one line": noticed(inLine((line) => line + line)),
  "a row behind a mark": noticed(inLine((line) => `#${line}`)),
  "words for a row": noticed(inLine(() => "signal lost")),
  "power lost in the last row": noticed((spot) => textOf(spot.table).slice(0, -2)),
  "an impossible value": noticed(inCell((cell, spot) => (spot.cell < 3 ? `${cell}x` : "6553.5"))),

  "a row twice": same(inLine((line) => `${line}\n${line}`)),
  "a blank line": same(inLine((line) => `${line}\n`)),
  "a remark": same(inLine((line) => `${line}\n# motor warm`)),
  "the header again": same(inLine((line, { table }) => `${line}\n${table[0]!.join(SEPARATOR)}`)),
  "a quoted cell": same(inCell((cell) => `"${cell}"`)),
  "blanks around a cell": same(inCell((cell) => `  ${cell}\t `)),
  "a plus sign": same(inCell((cell) => `+${cell}`)),
  "leading zeros": same(inCell((cell) => `00${cell}`)),
  "trailing zeros": same(inCell((cell) => (cell.includes(".") ? `${cell}00` : `${cell}.0`))),
  "an exponent": same(inCell((cell) => `${cell}e0`)),
  "an empty cell at the end": same(inLine((line) => `${line},`)),
  "a carriage return more": same(inLine((line) => `${line}\r`)),
  "words before the header": same(inText((text) => `Log of my own\nAircraft: Tern\n\n${text}`)),
  "a footer": same(inText((text) => `${text}\nTotal rows: many\n`)),
  "a byte order mark": same(inText((text) => `\ufeff${text}`)),
  "the delimiter named": same(inText((text) => `sep=,\n${text}`)),
  "an erased tail": same((spot) =>
    bytesOf(textOf(spot.table) + "\0".repeat(spot.random.pick([1, 512, 4096]))),
  ),
  "a column of words": same(({ table }) =>
    textOf(table.map((cells, line) => [...cells, line === 0 ? "__proto__" : "=1+1"])),
  ),

  "no row": refusal(({ table }) => textOf(table.slice(0, 1))),
  "no byte": refusal(() => ""),
  "an erased file": refusal(() => new Uint8Array(4096)),
  "a picture": refusal(({ random }) =>
    Uint8Array.from([
      0x89,
      0x50,
      0x4e,
      0x47,
      13,
      10,
      26,
      10,
      ...Array.from({ length: 900 }, () => random.whole(0, 255)),
    ]),
  ),
  "no header": question(({ table }) => textOf(table.slice(1))),
  "no clock": question(withoutColumn(0)),
  "a clock that stands": question(({ table }) =>
    textOf(table.map((cells, line) => (line === 0 ? cells : cells.with(0, "12.0")))),
  ),
  "two columns of amps": question(({ table }) =>
    textOf(
      table.map((cells, line) => [...cells, line === 0 ? cells[4]! : `${Number(cells[4]) + line / 10}`]),
    ),
  ),
};

export const DEFECT_NAMES = Object.keys(DEFECTS);

/** One log with one defect, from one seed; null when the right answer came out, else what did instead. */
export function defectTrial(name: string, random: Random): string | null {
  const rows = flightNumbers(random.fork("log"), 100);
  const table = plainTable(rows);
  const line = random.whole(3, table.length - 3);
  const cell = random.whole(0, PLAIN_ORDER.length - 1);
  const { verdict, spoil } = DEFECTS[name]!;
  const file = spoil({ table, rows, line, cell, random });
  const bytes = typeof file === "string" ? bytesOf(file) : file;
  const { outcome, sums } = readSums(bytes);
  const where = `${name}, line ${line + 1}, cell ${cell + 1}`;
  if (verdict === "refusal" || verdict === "question") {
    return outcome.state === verdict ? null : `${where}: ${outcome.state}, not a ${verdict}`;
  }
  if (sums === null) return `${where}: ${outcome.state}`;
  const clean = exactSums(rows);
  if (verdict === "same") return isSame(sums, clean) ? null : `${where}: other sums`;
  const at = name.startsWith("power lost") ? rows.length - 1 : line - 1;
  const isTold = sums.recording.notices.some((notice) =>
    notice.lines?.some((each) => each - at >= 2 && each - at <= 3),
  );
  if (!isTold) return `${where}: silent`;
  return withinOneRow(sums, rows, at, where);
}

function isSame(one: Sums, other: Sums): boolean {
  return near(one.chargeMah, other.chargeMah) && near(one.energyWh, other.energyWh);
}

function near(got: number, expected: number): boolean {
  return Math.abs(got - expected) <= 1e-9 * Math.abs(expected);
}

/** The sums are those of the clean log, or of it without what one row says (all of it, its amps, its volts). */
function withinOneRow(sums: Sums, rows: readonly WholeRow[], at: number, where: string): string | null {
  const row = rows[at]!;
  const possible = [
    exactSums(rows),
    exactSums(rows.toSpliced(at, 1)),
    exactSums(rows.with(at, { ...row, milliamps: null } as unknown as WholeRow)),
    exactSums(rows.with(at, { ...row, millivolts: null } as unknown as WholeRow)),
  ];
  return possible.some((each) => isSame(sums, each))
    ? null
    : `${where}: ${sums.chargeMah} mAh of no possible log`;
}
