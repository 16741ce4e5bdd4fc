import { type ChannelName, channelWords } from "../../base/channels/index.ts";
import { linesText } from "../../base/notices/index.ts";
import { capital } from "../../base/words/index.ts";
import {
  LONGEST_LINE,
  MOST_BYTES,
  MOST_COLUMNS,
  MOST_ROWS,
  MOST_TABLE_CELLS,
  QUOTED_CHARACTERS,
} from "./limits.ts";
import type { LineCount } from "./tableDefects.ts";

/** A piece of the file as a sentence shows it: one line, at most 40 characters, no control characters. */
export function quoted(text: string): string {
  const clean = text.slice(0, QUOTED_CHARACTERS + 1).replace(/[\p{C}\p{Zl}\p{Zp}]/gu, "�");
  return clean.length > QUOTED_CHARACTERS ? `"${clean.slice(0, QUOTED_CHARACTERS)}…"` : `"${clean}"`;
}

/** The name of a column for a sentence; "column 3" when it has none. */
export function columnName(header: string, at: number): string {
  return header === "" ? `column ${at + 1}` : `column ${quoted(header)}`;
}

function rows(count: number): string {
  return count === 1 ? "1 row" : `${count} rows`;
}

function cells(count: number): string {
  return count === 1 ? "1 cell" : `${count} cells`;
}

function where(count: LineCount): string {
  return linesText(count.lines, count.count);
}

export const empty = (): string => "The file is empty. Copy the log from the logger again.";
export const onlyErased = (byteCount: number): string =>
  `The file is empty: its ${byteCount} bytes hold no character. Copy the log from the logger again.`;
export const notText = (): string =>
  "The file is not text, so it is no CSV log. Export the log as CSV, or choose another file.";
export const tooManyBytes = (byteCount: number): string =>
  `The file has ${byteCount} bytes; at most ${MOST_BYTES} are read. Split the log, or leave out columns.`;
export const lineTooLong = (line: number): string =>
  `The text at line ${line} is longer than ${LONGEST_LINE} characters (4 MB), the limit. The file is no log or damaged.`;
export const tooManyColumns = (count: number): string =>
  `The log has ${count} columns; at most ${MOST_COLUMNS} are read. Leave out columns when you export it.`;
export const tooManyRows = (): string =>
  `The log is too large: at most ${MOST_ROWS} rows and ${MOST_TABLE_CELLS} cells are read. Split it.`;
export const noLog = (kind: string): string =>
  `The file is ${kind}, not a log. Choose the CSV file that the logger wrote, or export the log as CSV.`;
export const noDataRows = (header: string, line: number): string =>
  line === 0
    ? "The file has no data rows: no line holds numbers. Choose another file."
    : `The file has no data rows: after ${quoted(header)} in line ${line} no line holds numbers. Choose another file.`;

export const guessedEncoding = (encoding: string): string =>
  `The file names no encoding; its bytes are read as ${encoding}.`;
export const tail = (byteCount: number): string =>
  `There are ${byteCount} erased bytes (NUL or 0xFF) after the last row. Power was lost, or the card was pre-allocated; the rows are kept.`;
export const preamble = (lineCount: number, first: string): string =>
  `${lineCount === 1 ? "1 line" : `${lineCount} lines`} before the header are not data. The first is ${quoted(first)}.`;
export const noHeader = (line: number, channelOptions: string): string =>
  `No header line was found: line ${line} already holds numbers. Say which column is which, for instance ${channelOptions}.`;
export const headerless = (): string => "The log has no header line; columns are taken by the numbers given.";

export const repeatedHeader = (count: LineCount): string =>
  `The logger restarted: header repeated at ${where(count)}. These lines are skipped.`;
export const changedColumns = (count: LineCount): string =>
  `The columns changed at ${where(count)}: the header came back in another order. The new order is followed from there.`;
export const wrongWidth = (count: LineCount, width: number): string =>
  `${rows(count.count)} left out at ${where(count)}: not ${width === 1 ? "1 cell" : `${width} cells`} as the header has.`;
export const damaged = (count: LineCount): string =>
  `${rows(count.count)} left out at ${where(count)}: the bytes there are erased or damaged.`;
export const brokenQuote = (count: LineCount): string =>
  `A quote that is never closed stands at ${where(count)}. Its cell counts as missing; other lines lose nothing.`;
export const blankTails = (count: LineCount): string =>
  `${rows(count.count)} with an empty cell too many at ${where(count)}. The other cells are read.`;
export const cutLastLine = (line: number): string =>
  `The last line of the file, line ${line}, has no line end while all others do. It may be cut and is left out.`;
export const comments = (count: LineCount): string =>
  `${count.count === 1 ? "1 comment line is" : `${count.count} comment lines are`} skipped, at ${where(count)}.`;
export const footer = (count: LineCount): string =>
  `A footer of ${count.count === 1 ? "1 line" : `${count.count} lines`} follows the rows at ${where(count)}. It is not read as data.`;
export const markChanges = (count: LineCount): string =>
  `The decimal mark changes between point and comma at ${where(count)}. Both are read.`;
export const longCell = (line: number, characters: number, column: string): string =>
  `A comment of ${characters} characters stands in ${column}, line ${line}. Only its first ${QUOTED_CHARACTERS} characters are shown.`;
export const missingCells = (
  count: number,
  column: string,
  words: readonly string[],
  lines: readonly number[],
): string =>
  `In ${column} ${cells(count)} ${count === 1 ? "is" : "are"} missing, at ${linesText(lines, count)}${
    words.length === 0 ? "" : `${WRITTEN}${words.slice(0, 4).map(quoted).join(", ")}`
  }.`;

const WRITTEN = "; written ";

/** True of cells that were left blank: nothing was written that the user may want to see. */
export const areBlankCells = ({ code, text }: { readonly code: string; readonly text: string }): boolean =>
  code === "cells-missing" && !text.includes(WRITTEN);
export const unreadableCells = (
  count: number,
  column: string,
  text: string,
  lines: readonly number[],
): string =>
  `In ${column} ${cells(count)} ${count === 1 ? "is" : "are"} no number, at ${linesText(lines, count)}: ${quoted(text)}. ${
    count === 1 ? "It counts" : "They count"
  } as missing.`;

export const decimalCommaInCommaFile = (names: number, width: number): string =>
  `The header has ${names} names but rows have ${width} cells: a decimal comma may clash with the delimiter. ` +
  `If so, give --decimal comma --delimiter ,`;
export const noJoinPattern = (names: number, width: number): string =>
  `No pattern joins the ${width} cells of a row to ${names} numbers with decimal comma. Export with another delimiter.`;
export const badDelimiter = (delimiter: string): string =>
  `A delimiter is one character; ${quoted(delimiter)} is not. Give , ; | or the words tab or space.`;
export const headerWidth = (names: number, width: number, line: number): string =>
  `The header in line ${line} has ${names} names, but rows have ${width} cells. Name columns by number, as in --column time=#1.`;

export const noTime = (): string =>
  "No column is a clock, so the sample rate is needed. Give the rows per second, as in --rate 10.";
export const constantTime = (column: string, value: string): string =>
  `The time in ${column} is constant (${value}) in all rows. Give the rows per second that your logger writes.`;
export const timeUnit = (column: string, unit: string, stepS: number, durationS: number): string =>
  `Which unit has the time in ${column}? Read in ${unit} a row lasts ${short(stepS)} s and the log ${durationS < 7200 ? `${short(durationS / 60)} min` : `${short(durationS / 3600)} h`}.`;
export const clockWithoutSeconds = (column: string, rows: number): string =>
  `The clock in ${column} shows no seconds, as after saving in a spreadsheet (${rows} rows). Give the rows per second that your logger writes.`;
export const minutesOrHours = (column: string, durationS: number): string =>
  `Is the time in ${column} hours and minutes? As minutes and seconds the log would last ${short(durationS)} s. Give the rows per second.`;
export const minutesTaken = (column: string, rate: string): string =>
  `The time in ${column} is read as minutes and seconds. If it is hours and minutes, give ${rate}.`;
export const faintCurrent = (column: string, unit: string, peak: string): string =>
  `Is ${column} truly in ${unit}? Its most would be ${peak} A, which turns no propeller of this trade. Say which unit it is.`;
export const backwardTime = (column: string, high: string, low: string): string =>
  `The time in ${column} runs backward, from ${high} to ${low}. ` +
  `Sort the rows by time; or, if they are in order and it counts down, give the rows per second.`;
export const timeUnitByCharge = (column: string, stepS: number, chargeMah: number): string =>
  `Which unit has the time in ${column}? Read in s a row lasts ${short(stepS)} s, and the charge is ${short(chargeMah / 1000)} Ah.`;
export const unusableTime = (column: string): string =>
  `The time given, ${column}, holds no clock that moves. Choose another column or give the rows per second that your logger writes.`;
export const ambiguousDate = (date: string): string =>
  `The date ${quoted(date)} could have day or month first; day first is shown. Numbers do not depend on it.`;

export const rivals = (channel: ChannelName, columns: readonly string[]): string =>
  `${columns.length} columns could be the ${channelWords(channel)}: ${columns.slice(0, 3).join(", ")}. Choose one with --column.`;
export const motorCurrent = (column: string): string =>
  `The only current, in ${column}, is the motor's by its header. Say with --column current=… if it is the pack's.`;
export const channelUnit = (channel: ChannelName, column: string, doubt: string): string =>
  `Which unit has the ${channelWords(channel)} in ${column}? ${sentence(doubt)}`;
export const cellCountUnclear = (column: string, doubt: string, likely: number): string =>
  `The cell count does not fit ${column}: ${doubt}. ${likely} cells would fit.`;
export const unitContradicted = (
  column: string,
  stated: string,
  given: string,
  statedValue: string,
  givenValue: string,
): string =>
  `The header of ${column} names ${stated}, but ${given} was given. ` +
  `Its high values are ${statedValue} as the header says and ${givenValue} as given.`;
export const timeUnitContradicted = (
  column: string,
  [stated, given]: readonly [string, string],
  [statedS, givenS]: readonly [string, string],
): string =>
  `The header of ${column} names ${stated}, but ${given} was given. ` +
  `The log lasts ${statedS} as the header says and ${givenS} as given.`;
export const unitFromValues = (channel: ChannelName, column: string, unit: string): string =>
  `The ${channelWords(channel)} in ${column} is read in ${unit}, because its values fit that unit only.`;
export const perCell = (column: string): string =>
  `The only volts, in ${column}, are of one cell. Say how many cells in series the pack has.`;
export const packFromCell = (column: string): string =>
  `The pack voltage is that of one cell, in ${column}, times the cells in series.`;
export const electricalSpeed = (column: string): string =>
  `The speed in ${column} is electrical. Give the motor's pole pairs, half its magnets, to read the shaft speed from it.`;
export const sharedCellSum = (cellCount: number): string =>
  `The pack voltage is the sum of ${cellCount} cell columns.`;
export const cellLost = (cell: number, rowCount: number, line: number, share: number): string =>
  `Cell ${cell} shows no volts in ${rows(rowCount)} from line ${line}, the others do: an open lead. ` +
  `There the pack voltage takes it as ${share.toFixed(3)} of the others' mean, as before.`;
export const cellNeverShown = (cell: number): string =>
  `Cell ${cell} shows no volts in any row: an open lead. The pack voltage takes the other cells' mean for it. Measure that cell.`;
export const deadCells = (live: number, all: number, dead: readonly number[]): string =>
  `${live} of ${all} cell columns show volts; cell ${dead.slice(0, 4).join(", ")} shows 0 in every row. ` +
  `Say how many cells the pack has: --cells ${live} or --cells ${all}.`;
export const notFound = (channel: ChannelName, free: readonly string[]): string =>
  free.length === 0
    ? `No column holds the ${channelWords(channel)}: ${lostWithout(channel)} cannot be told. If one does, name it: --column ${channel}=HEADER.`
    : `No column is the ${channelWords(channel)} by its name. It could be ${free.join(", ")}.`;

function lostWithout(channel: ChannelName): string {
  return channel === "packVoltage" ? "power, energy and volts per cell" : "charge, energy and power";
}

export const nothingUseful = (headers: readonly string[]): string =>
  `No column is a pack voltage, current or speed. The columns are ${headers.slice(0, 8).map(quoted).join(", ")}${
    headers.length > 8 ? ` and ${headers.length - 8} more` : ""
  }. Name one with --column packVoltage=HEADER.`;

export const unknownHeader = (header: string, nearest: string | null, headers: readonly string[]): string =>
  nearest === null
    ? `The log has no column ${quoted(header)}. It has ${headers.slice(0, 8).map(quoted).join(", ")}${
        headers.length > 8 ? ` and ${headers.length - 8} more` : ""
      }.`
    : `The log has no column ${quoted(header)}. Did you mean ${quoted(nearest)}?`;
export const headerTwice = (header: string, columns: readonly number[]): string =>
  `The header ${quoted(header)} stands over columns ${columns.join(" and ")}. Name one by its number.`;
export const unknownChannel = (channel: string, nearest: string | null): string =>
  `There is no channel ${quoted(channel)}. ${nearest === null ? "See the list of channels in the help." : `Did you mean ${nearest}?`}`;
export const unknownUnit = (channel: ChannelName, unit: string, names: readonly string[]): string =>
  `The ${channelWords(channel)} cannot be in ${quoted(unit)}. Known are ${names.join(", ")}.`;
export const badRate = (rate: number): string =>
  `A sample rate of ${rate} is no number of rows per second above 0.`;

function short(value: number): string {
  return String(Number(value.toPrecision(3)));
}

function sentence(text: string): string {
  return `${capital(text)}.`;
}

export const packsInSeries = (): string =>
  "Two columns are read as two packs in series: pack voltage is their sum, which fits the number of cells.";

export const currentDerived = (power: string): string =>
  `No column holds the current: it is derived as ${power} over the pack voltage. It is as good as both together.`;
