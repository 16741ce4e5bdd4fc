import { LONGEST_LINE } from "./limits.ts";
import { EXACT_DIGITS, EXACT_POWERS } from "./strictNumber.ts";

const LF = 0x0a;
const CR = 0x0d;
const SPACE = 0x20;
const MINUS = 0x2d;
const ZERO = 0x30;
const NINE = 0x39;
/** Rows read at once. */
const MOST_ROWS_AT_ONCE = 4096;
/** Digits whose number is a small integer: added up as such, far quicker than as a double. */
const FEW_DIGITS = 9;
/** Numbers held at once, so that a table of very many columns stays small. */
const MOST_NUMBERS_AT_ONCE = 1 << 17;
/** No digit, sign, mark or blank; a blank as delimiter is tidied first. */
const DELIMITERS = [",", ";", "\t", "|"];

/**
 * Reads lines of plain numbers straight from bytes: digits with at most one mark and a minus, blanks around them,
 * empty cells, LF or CRLF. It stops before the first line that holds anything else, or another count of cells:
 * that line is papaparse's, and the rules of `TableBuilder` apply to it.
 */
export class CleanRows {
  /** Numbers of the last scan, column after column; NaN for an empty cell. */
  private readonly values: Float64Array;
  /** True where the last scan met an empty cell. */
  hasBlanks = false;
  /** Where the last scan stopped: the start of a line. */
  end = 0;
  private readonly delimiter: number;
  private readonly most: number;

  private constructor(
    readonly width: number,
    delimiter: string,
  ) {
    this.delimiter = delimiter.charCodeAt(0);
    this.most = Math.min(MOST_ROWS_AT_ONCE, Math.max(1, Math.floor(MOST_NUMBERS_AT_ONCE / width)));
    this.values = new Float64Array(this.most * width);
  }

  /** A scanner for rows of `width` cells, or null where no line can be read this way. */
  static of(width: number, delimiter: string): CleanRows | null {
    return DELIMITERS.includes(delimiter) && width > 0 ? new CleanRows(width, delimiter) : null;
  }

  /** Reads rows from `start`, the start of a line; returns how many. `bytes` ends with a line end. */
  scan(bytes: Uint8Array, start: number, mark: "." | ","): number {
    const markCode = mark.charCodeAt(0);
    this.end = start;
    this.hasBlanks = false;
    if (markCode === this.delimiter) return 0;
    let rows = 0;
    while (rows < this.most && this.end < bytes.length) {
      const next = this.scanRow(bytes, this.end, markCode, rows);
      if (next < 0) break;
      this.end = next;
      rows++;
    }
    return rows;
  }

  /** The first `rows` numbers of a column of the last scan. */
  column(cell: number, rows: number): Float64Array {
    return this.values.subarray(cell * this.most, cell * this.most + rows);
  }

  /** Reads one row into `values`; returns where the next line starts, or -1. */
  private scanRow(bytes: Uint8Array, start: number, mark: number, row: number): number {
    const { width, delimiter, values, most } = this;
    let at = start;
    let numbers = 0;
    for (let cell = 0; cell < width; cell++) {
      let code = bytes[at]!;
      while (code === SPACE) code = bytes[++at]!;
      const isNegative = code === MINUS;
      if (isNegative) code = bytes[++at]!;
      const from = at;
      let size = 0;
      for (; code >= ZERO && code <= NINE; code = bytes[++at]!) size = (size * 10 + (code - ZERO)) | 0;
      let digits = at - from;
      let decimals = 0;
      if (code === mark) {
        const fromDecimal = at + 1;
        code = bytes[++at]!;
        for (; code >= ZERO && code <= NINE; code = bytes[++at]!) size = (size * 10 + (code - ZERO)) | 0;
        decimals = at - fromDecimal;
        digits += decimals;
        if (digits === 0) return -1;
      }
      const whole = digits <= FEW_DIGITS ? size : manyDigits(bytes, from, at);
      if (digits > EXACT_DIGITS || (digits === 0 && isNegative)) return -1;
      while (code === SPACE) code = bytes[++at]!;
      const value = decimals === 0 ? whole : whole / EXACT_POWERS[decimals]!;
      if (digits > 0) numbers++;
      else this.hasBlanks = true;
      values[cell * most + row] = digits === 0 ? Number.NaN : isNegative ? -value : value;
      if (cell + 1 < width) {
        if (code !== delimiter) return -1;
        at++;
      } else at = afterLineEnd(bytes, at);
    }
    return numbers > 0 && at - start <= LONGEST_LINE ? at : -1;
  }
}

/** The digits of a cell as one number, the mark between them passed over; exact up to 15 of them. */
function manyDigits(bytes: Uint8Array, from: number, end: number): number {
  let value = 0;
  for (let at = from; at < end; at++) {
    const code = bytes[at]!;
    if (code >= ZERO && code <= NINE) value = value * 10 + (code - ZERO);
  }
  return value;
}

/** Index after LF or CRLF; -1 when anything else stands there. */
function afterLineEnd(bytes: Uint8Array, at: number): number {
  if (bytes[at] === LF) return at + 1;
  return bytes[at] === CR && bytes[at + 1] === LF ? at + 2 : -1;
}
