import { LONGEST_LINE } from "./limits.ts";
import { EXACT_DIGITS, EXACT_POWERS } from "./strictNumber.ts";

const LF = 0x0a;
const CR = 0x0d;
const SPACE = 0x20;
const MINUS = 0x2d;
const ZERO = 0x30;
/** Rows read at once. */
const MOST_ROWS_AT_ONCE = 4096;
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
  /** Row-major numbers of the last scan; NaN for an empty cell. */
  readonly values: Float64Array;
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
    if (markCode === this.delimiter) return 0;
    let rows = 0;
    while (rows < this.most && this.end < bytes.length) {
      const next = this.scanRow(bytes, this.end, markCode, rows * this.width);
      if (next < 0) break;
      this.end = next;
      rows++;
    }
    return rows;
  }

  /** Reads one row into `values` from `place` on; returns where the next line starts, or -1. */
  private scanRow(bytes: Uint8Array, start: number, mark: number, place: number): number {
    const { width, delimiter, values } = this;
    let at = start;
    let numbers = 0;
    for (let cell = 0; cell < width; cell++) {
      while (bytes[at] === SPACE) at++;
      const isNegative = bytes[at] === MINUS;
      if (isNegative) at++;
      let value = 0;
      let digits = 0;
      let beforeMark = -1;
      let code = bytes[at]!;
      for (; ; code = bytes[++at]!) {
        if (code >= ZERO && code <= ZERO + 9) {
          value = value * 10 + (code - ZERO);
          digits++;
        } else if (code === mark && beforeMark < 0) beforeMark = digits;
        else break;
      }
      while (code === SPACE) code = bytes[++at]!;
      const isPlain = digits > 0 ? digits <= EXACT_DIGITS : !isNegative && beforeMark < 0;
      if (!isPlain) return -1;
      if (digits > 0) numbers++;
      const size = beforeMark < 0 ? value : value / EXACT_POWERS[digits - beforeMark]!;
      values[place + cell] = digits === 0 ? Number.NaN : isNegative ? -size : size;
      if (cell + 1 < width) {
        if (code !== delimiter) return -1;
        at++;
      } else at = afterLineEnd(bytes, at);
    }
    return numbers > 0 && at - start <= LONGEST_LINE ? at : -1;
  }
}

/** Index after LF or CRLF; -1 when anything else stands there. */
function afterLineEnd(bytes: Uint8Array, at: number): number {
  if (bytes[at] === LF) return at + 1;
  return bytes[at] === CR && bytes[at + 1] === LF ? at + 2 : -1;
}
