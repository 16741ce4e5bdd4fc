import { LISTED_LINES } from "../../base/notices/index.ts";

/** A count with the first file lines. */
export class LineCount {
  count = 0;
  readonly lines: number[] = [];

  add(line: number): void {
    this.count++;
    if (this.lines.length < LISTED_LINES) this.lines.push(line);
  }
}

export interface LongCell {
  readonly line: number;
  readonly characters: number;
  readonly column: number;
}

/** What a table left out or changed, counted by kind. */
export class TableDefects {
  readonly wrongWidth = new LineCount();
  readonly damaged = new LineCount();
  readonly brokenQuotes = new LineCount();
  readonly blankTails = new LineCount();
  readonly comments = new LineCount();
  readonly footer = new LineCount();
  readonly repeatedHeaders = new LineCount();
  readonly changedHeaders = new LineCount();
  readonly markChanges = new LineCount();
  readonly longCells: LongCell[] = [];
  cutLastLine: number | null = null;

  addLongCell(line: number, characters: number, column: number): void {
    if (this.longCells.length < LISTED_LINES) this.longCells.push({ line, characters, column });
  }
}
