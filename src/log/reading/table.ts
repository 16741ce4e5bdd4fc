import { countOf, isBlank, isComment, isNumber } from "./cells.ts";
import type { CleanRows } from "./cleanRows.ts";
import { Column } from "./column.ts";
import { joinCells } from "./joinedCells.ts";
import type { Layout } from "./layout.ts";
import { LONG_CELL, MOST_ROWS, MOST_TABLE_CELLS } from "./limits.ts";
import type { LineBlock } from "./lines.ts";
import { OddLines } from "./oddLines.ts";
import { cellsOfRecords } from "./papaparse.ts";
import { tidyLine } from "./quotes.ts";
import { RecordCutter } from "./recordCutter.ts";
import { sameNames, startsNewHeader } from "./repeatedHeader.ts";
import { RowLines } from "./rowLines.ts";
import { RowNumbers } from "./rowNumbers.ts";
import { TableDefects } from "./tableDefects.ts";

/** Rows and columns of a file as numbers, with everything that was left out. */
export interface Table {
  readonly names: readonly string[];
  readonly columns: readonly Column[];
  readonly rows: number;
  readonly dataLines: number;
  readonly lines: RowLines;
  readonly defects: TableDefects;
  /** Decimal mark of the last row. */
  readonly mark: "." | ",";
}

type CleanColumns = Pick<CleanRows, "column" | "hasBlanks">;

/** Rows begin with a number, a clock or a blank cell. */
const FIRST_OF_A_ROW = /^\s*[\d+\-.,;]/;
const DAMAGED = /\0|\ufffd{4}/;

/** Builds the table line by line; nothing of the text is kept but a few quoted cells. */
export class TableBuilder {
  readonly defects = new TableDefects();
  private readonly names: string[];
  private readonly columns: Column[];
  private readonly lines = new RowLines();
  private readonly cutter: RecordCutter;
  private readonly numbers: RowNumbers;
  /** File column of each cell of a row. */
  private order: number[];
  private readonly odd = new OddLines();
  /** Records cut but not read yet: papaparse takes many at once. */
  private readonly waiting = { records: [] as string[], lines: [] as number[], blanks: [] as boolean[] };
  private isAfterBlank = false;
  private readonly numbersOfRow: number;
  private isJustAfterHeader = false;
  /** Set when the table outgrew a limit. */
  tooLarge = false;

  constructor(private readonly layout: Layout) {
    this.names = [...layout.header];
    this.columns = this.names.map(() => new Column());
    this.order = this.names.map((_, index) => index);
    this.numbers = new RowNumbers(this.names.length, layout.mark, layout.isMarkGiven);
    this.numbersOfRow = layout.numbersOfRow;
    this.cutter = new RecordCutter(layout.delimiter, (line) => this.isRowByItself(line));
  }

  /** Adds the next block of lines. */
  addBlock(block: LineBlock): void {
    const isEnd = block.isLast;
    block.lines.forEach((text, index) => {
      const line = block.firstLine + index;
      if (line < this.layout.bodyLine) return;
      const isCut = isEnd && !block.isTerminated && index === block.lines.length - 1;
      const isFirst = this.lines.rows + this.waiting.records.length + this.layout.headerLine === 0;
      if (isCut && !isFirst && !isBlank(text)) this.addCutLine(line);
      else this.addLine(text, line);
      // What follows a header is judged by its columns, wherever the block ends.
      if (this.waiting.records.length > 0 && this.mayBeHeader(text)) this.addWaiting();
    });
    if (isEnd) this.cutter.end(this.take, (line) => this.addBrokenQuote(line));
    this.addWaiting();
    if (isEnd) this.settleOddLines(true);
  }

  /** Whether the line may be one of plain numbers as far as the lines before it tell. */
  takesCleanRows(line: number): boolean {
    const { joins, bodyLine } = this.layout;
    return joins === null && line >= bodyLine && !this.cutter.isOpen && !this.isJustAfterHeader;
  }

  /** Cells of a row as the last header orders them, and the mark of the last row. */
  get form(): { readonly width: number; readonly mark: "." | "," } {
    return { width: this.order.length, mark: this.numbers.mark };
  }

  /** Adds rows of plain numbers on consecutive lines; NaN for an empty cell. */
  addCleanRows(clean: CleanColumns, rows: number, firstLine: number): void {
    this.isAfterBlank = false;
    this.settleOddLines(false);
    this.order.forEach((column, cell) => {
      this.columns[column]!.addRun(clean.column(cell, rows), firstLine, clean.hasBlanks);
    });
    this.addLines(firstLine, rows);
  }

  /** Makes room for so many more rows. */
  reserve(rows: number): void {
    for (const column of this.columns) column.reserve(this.lines.rows + rows);
  }

  get columnCount(): number {
    return this.columns.length;
  }

  finished(): Table {
    const rows = this.lines.rows;
    for (const column of this.columns) column.padTo(rows);
    return {
      names: this.names,
      columns: this.columns,
      rows,
      dataLines: this.lines.dataLines,
      lines: this.lines,
      defects: this.defects,
      mark: this.numbers.mark,
    };
  }

  private readonly take = (record: string, line: number): void => {
    this.waiting.records.push(record);
    this.waiting.lines.push(line);
    this.waiting.blanks.push(this.isAfterBlank);
    this.isAfterBlank = false;
  };

  private addLine(text: string, line: number): void {
    if (!this.cutter.isOpen) {
      if (isBlank(text)) {
        this.isAfterBlank = true;
        return;
      }
      const isDamaged = DAMAGED.test(text);
      if (isDamaged) this.addDamaged(line);
      if (isDamaged) return;
      const isRemark = isComment(text) && !this.isHeaderText(text);
      if (isRemark) this.addComment(text, line);
      if (isRemark) return;
    }
    this.cutter.add(tidyLine(text, this.layout.delimiter), line, this.take, (broken) =>
      this.addBrokenQuote(broken),
    );
  }

  /** True for every line that could turn out to be a header, its quotes torn or not. */
  private mayBeHeader(text: string): boolean {
    if (FIRST_OF_A_ROW.test(text)) return false;
    const cells = text.replaceAll('"', "").split(this.layout.delimiter);
    const known = countOf(cells, (cell) => this.names.includes(cell.trim()));
    return known >= Math.min(2, this.names.length);
  }

  private isHeaderText(text: string): boolean {
    const bare = text.replace(/^\s*(?:#|\/\/|%)+\s?/, "");
    return sameNames(
      bare.split(this.layout.delimiter).map((cell) => cell.trim()),
      this.names,
    );
  }

  /** A comment with as many numbers as a row is a row behind a mark; it is left out and counted as such. */
  private addComment(text: string, line: number): void {
    const cells = text.replace(/^\s*(?:#|\/\/|%)+\s?/, "").split(this.layout.delimiter);
    const numbers = countOf(
      cells.map((cell) => cell.trim()),
      isNumber,
    );
    const isRow = this.numbersOfRow > 0 && numbers >= this.numbersOfRow;
    if (isRow) this.addWaiting();
    if (isRow) this.leaveOut(line);
    else this.defects.comments.add(line);
  }

  private leaveOut(line: number): void {
    this.lines.leaveOut();
    this.defects.wrongWidth.add(line);
  }

  private addDamaged(line: number): void {
    this.addWaiting();
    this.lines.leaveOut();
    this.defects.damaged.add(line);
  }

  private addBrokenQuote(line: number): void {
    this.defects.brokenQuotes.add(line);
  }

  private addCutLine(line: number): void {
    this.addWaiting();
    this.lines.leaveOut();
    this.defects.cutLastLine = line;
  }

  /** Adds the records before a line that is left out, so that rows and lines left out keep their order. */
  private addWaiting(): void {
    const { records, lines, blanks } = this.waiting;
    if (records.length === 0) return;
    const rows = cellsOfRecords(records, this.layout.delimiter);
    for (let index = 0; index < rows.length; index++) {
      const cells = rows[index]!;
      for (let at = 0; at < cells.length; at++) cells[at] = cells[at]!.trim();
      this.addRow(cells, lines[index]!, blanks[index]!);
    }
    records.length = lines.length = blanks.length = 0;
  }

  private addRow(raw: string[], line: number, isAfterBlank: boolean): void {
    const cells = this.layout.joins === null ? raw : joinCells(raw, this.layout.joins);
    if (startsNewHeader(cells, this.names)) this.addHeader(cells, line);
    else this.addData(cells, line, isAfterBlank);
  }

  private addData(cells: string[], line: number, isAfterBlank: boolean): void {
    const width = this.order.length;
    if (cells.length > width && cells.slice(width).every((cell) => cell === "")) {
      cells.length = width;
      this.defects.blankTails.add(line);
    }
    if (this.isJustAfterHeader && this.isUnitsRow(cells)) return;
    this.isJustAfterHeader = false;
    const numbers =
      cells.length === width ? this.numbers.convert(cells, () => this.defects.markChanges.add(line)) : 0;
    if (
      cells.length !== width ||
      (numbers === 0 && cells.some((cell) => /\p{L}{3}/u.test(cell)) && !this.hasClock(cells))
    ) {
      this.odd.add(line, isAfterBlank, /^\D+$/.test(cells[0]!));
      return;
    }
    this.settleOddLines(false);
    this.store(cells, line);
  }

  /** A row without any number may still hold a clock; sensors may all be missing. */
  private hasClock(cells: readonly string[]): boolean {
    return cells.some((cell) => /^\d{1,4}[:./-]\d/.test(cell));
  }

  private isUnitsRow(cells: readonly string[]): boolean {
    const units = this.layout.units;
    return (
      units !== null && cells.length === units.length && cells.every((cell, index) => cell === units[index])
    );
  }

  private addHeader(cells: string[], line: number): void {
    this.odd.forget();
    this.isJustAfterHeader = true;
    this.defects.repeatedHeaders.add(line);
    const bare = cells.map((cell, index) => (index === 0 ? cell.replace(/^(?:#|\/\/|%)+\s?/, "") : cell));
    const isSame =
      bare.length === this.order.length && bare.every((cell, at) => cell === this.names[this.order[at]!]);
    if (isSame) return;
    this.defects.changedHeaders.add(line);
    const taken = new Set<number>();
    this.order = bare.map((name) => {
      const known = this.names.findIndex((each, index) => each === name && !taken.has(index));
      const at = known >= 0 ? known : this.addColumn(name);
      taken.add(at);
      return at;
    });
    this.numbers.resize(this.order.length);
  }

  private addColumn(name: string): number {
    const column = new Column();
    column.padTo(this.lines.rows);
    this.names.push(name);
    this.columns.push(column);
    return this.columns.length - 1;
  }

  private store(cells: readonly string[], line: number): void {
    for (let at = 0; at < cells.length; at++) {
      const column = this.columns[this.order[at]!]!;
      const value = this.numbers.values[at]!;
      if (!Number.isNaN(value)) column.addNumber(value);
      else {
        const text = cells[at]!;
        if (text.length > LONG_CELL) this.defects.addLongCell(line, text.length, this.order[at]!);
        column.addText(text, line);
      }
    }
    this.addLines(line, 1);
  }

  private addLines(firstLine: number, count: number): void {
    this.lines.add(firstLine, count);
    const rows = this.lines.rows;
    if (this.order.length < this.columns.length) for (const column of this.columns) column.padTo(rows);
    if (rows > MOST_ROWS || rows * this.columns.length > MOST_TABLE_CELLS) this.tooLarge = true;
  }

  /** Lines that were no rows: between rows they are left out and counted; at the end they may be a footer. */
  private settleOddLines(isEnd: boolean): void {
    if (this.odd.isEmpty) return;
    const isFooter = isEnd && this.odd.isFooter;
    for (const line of this.odd.release(isFooter)) {
      if (isFooter) this.defects.footer.add(line);
      else this.leaveOut(line);
    }
  }

  private isRowByItself(line: string): boolean {
    const cells = line.split(this.layout.delimiter);
    return (
      cells.length === this.order.length &&
      countOf(
        cells.map((cell) => cell.trim()),
        isNumber,
      ) *
        2 >=
        this.numbersOfRow
    );
  }
}
