/** File line and data-line number of each row kept: runs of rows that follow each other are kept as one. */
export class RowLines {
  rows = 0;
  dataLines = 0;
  /** Row, line and data-line number at which each run starts. */
  private readonly firstRows: number[] = [];
  private readonly firstLines: number[] = [];
  private readonly firstOrdinals: number[] = [];
  private nextLine = -1;
  private nextOrdinal = -1;

  /** Adds rows on consecutive lines. */
  add(line: number, rows = 1): void {
    if (line !== this.nextLine || this.dataLines !== this.nextOrdinal) {
      this.firstRows.push(this.rows);
      this.firstLines.push(line);
      this.firstOrdinals.push(this.dataLines);
    }
    this.rows += rows;
    this.dataLines += rows;
    this.nextLine = line + rows;
    this.nextOrdinal = this.dataLines;
  }

  /** A data line that gives no row. */
  leaveOut(): void {
    this.dataLines++;
  }

  /** 1-based file line of a row that is there. */
  lineOfRow(row: number): number {
    return this.inRun(this.firstLines, row);
  }

  /** 0-based number of the row's data line, counting lines left out. */
  ordinalOfRow(row: number): number {
    return this.inRun(this.firstOrdinals, row);
  }

  private inRun(firsts: readonly number[], row: number): number {
    let low = 0;
    let high = this.firstRows.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (this.firstRows[middle]! <= row) low = middle;
      else high = middle - 1;
    }
    return firsts[low]! + row - this.firstRows[low]!;
  }
}
