import { LISTED_LINES } from "../../base/notices/index.ts";
import { readClock } from "./clockText.ts";
import { QUOTED_CHARACTERS } from "./limits.ts";
import { isMissingWord } from "./missingWords.ts";

/** A cell that is neither a number, a clock nor a word for missing. */
export interface UnreadableCell {
  readonly line: number;
  /** First characters, as written. */
  readonly text: string;
}

/** How the first clock of a column was written: a pattern for showing the others. */
export interface WrittenClock {
  readonly text: string;
  readonly offsetS: number;
}

const FIRST_CAPACITY = 1024;

/** One file column while it is read: numbers in one growing array, everything else counted. */
export class Column {
  values = new Float64Array(FIRST_CAPACITY);
  /** Packed dates beside `values`, only for a column with dates. */
  dateCodes: Float64Array | null = null;
  /** 1 where a value is a clock, only for a column with clocks. */
  private clockFlags: Uint8Array | null = null;
  length = 0;
  numberCount = 0;
  clockCount = 0;
  dateCount = 0;
  twoPartCount = 0;
  blankCount = 0;
  missingWordCount = 0;
  unreadableCount = 0;
  readonly blankLines: number[] = [];
  readonly missingLines: number[] = [];
  readonly missingWords = new Set<string>();
  readonly unreadable: UnreadableCell[] = [];
  firstClock: WrittenClock | null = null;
  /** The first clocks as written. */
  private readonly clockTexts: string[] = [];

  addNumber(value: number): void {
    this.grow();
    this.values[this.length++] = value;
    this.numberCount++;
  }

  /** Numbers of consecutive lines; NaN for an empty cell, of which there are none unless `hasBlanks`. */
  addRun(numbers: Float64Array, firstLine: number, hasBlanks: boolean): void {
    this.reserve(this.length + numbers.length);
    this.values.set(numbers, this.length);
    this.length += numbers.length;
    this.numberCount += numbers.length;
    if (!hasBlanks) return;
    for (let row = 0; row < numbers.length; row++) {
      if (!Number.isNaN(numbers[row]!)) continue;
      this.numberCount--;
      this.countBlank(firstLine + row);
    }
  }

  /** A cell that is no number: a clock, a missing value, or unreadable. `text` is trimmed. */
  addText(text: string, line: number): void {
    this.grow();
    this.values[this.length++] = Number.NaN;
    if (text === "") this.countBlank(line);
    else if (isMissingWord(text)) {
      this.missingWordCount++;
      if (this.missingWords.size < 10) this.missingWords.add(text);
      if (this.missingLines.length < LISTED_LINES) this.missingLines.push(line);
    } else if (!this.addClock(text)) {
      this.unreadableCount++;
      if (this.unreadable.length < LISTED_LINES) {
        this.unreadable.push({ line, text: text.slice(0, QUOTED_CHARACTERS) });
      }
    }
  }

  /** Rows before this column existed. */
  padTo(length: number): void {
    while (this.length < length) {
      this.grow();
      this.values[this.length++] = Number.NaN;
      this.blankCount++;
    }
  }

  /** Cells that are not missing. */
  get filledCount(): number {
    return this.numberCount + this.clockCount + this.unreadableCount;
  }

  finished(): Float64Array {
    return this.values.subarray(0, this.length);
  }

  /** Makes every number, or every clock, an unreadable cell. */
  dropWhere(kind: "number" | "clock", lineOfRow: (row: number) => number): void {
    const dropped = kind === "clock" ? 1 : 0;
    let count = 0;
    for (let row = 0; row < this.length; row++) {
      const value = this.values[row]!;
      if (Number.isNaN(value) || (this.clockFlags?.[row] ?? 0) !== dropped) continue;
      this.values[row] = Number.NaN;
      if (this.dateCodes !== null) this.dateCodes[row] = Number.NaN;
      const text = kind === "clock" ? (this.clockTexts[count] ?? "") : String(value);
      if (count++ < LISTED_LINES) this.unreadable.push({ line: lineOfRow(row), text });
    }
    this.unreadableCount += count;
    this.unreadable.sort((one, other) => one.line - other.line).splice(LISTED_LINES);
    if (kind === "number") this.numberCount = 0;
    else this.clockCount = this.dateCount = this.twoPartCount = 0;
  }

  private addClock(text: string): boolean {
    const clock = readClock(text);
    if (clock === null) return false;
    this.clockCount++;
    this.clockFlags ??= new Uint8Array(this.values.length);
    this.clockFlags[this.length - 1] = 1;
    this.values[this.length - 1] = clock.secondsOfDay;
    if (clock.isTwoPart) this.twoPartCount++;
    if (!Number.isNaN(clock.dateCode)) {
      this.dateCount++;
      this.dateCodes ??= new Float64Array(this.values.length).fill(Number.NaN);
      this.dateCodes[this.length - 1] = clock.dateCode;
    }
    this.firstClock ??= { text, offsetS: clock.offsetS };
    if (this.clockTexts.length < LISTED_LINES) this.clockTexts.push(text);
    return true;
  }

  /** Makes room for so many values in all. */
  reserve(most: number): void {
    if (most <= this.values.length) return;
    const wider = new Float64Array(Math.max(most, this.values.length * 2));
    wider.set(this.values.subarray(0, this.length));
    this.values = wider;
    if (this.clockFlags !== null) {
      const flags = new Uint8Array(wider.length);
      flags.set(this.clockFlags.subarray(0, this.length));
      this.clockFlags = flags;
    }
    if (this.dateCodes === null) return;
    const dates = new Float64Array(wider.length).fill(Number.NaN);
    dates.set(this.dateCodes.subarray(0, this.length));
    this.dateCodes = dates;
  }

  private grow(): void {
    if (this.length === this.values.length) this.reserve(this.length + 1);
  }

  private countBlank(line: number): void {
    this.blankCount++;
    if (this.blankLines.length < LISTED_LINES) this.blankLines.push(line);
  }
}
