/** File line and data-line number of each row kept. */
export class RowLines {
  rows = 0;
  dataLines = 0;
  private lines = new Uint32Array(1024);
  private ordinals = new Uint32Array(1024);

  add(line: number): void {
    if (this.rows === this.lines.length) {
      this.lines = wider(this.lines);
      this.ordinals = wider(this.ordinals);
    }
    this.lines[this.rows] = line;
    this.ordinals[this.rows] = this.dataLines;
    this.rows++;
    this.dataLines++;
  }

  /** A data line that gives no row. */
  leaveOut(): void {
    this.dataLines++;
  }

  /** 1-based file line of a row; 0 outside the rows. */
  lineOfRow(row: number): number {
    return row < this.rows ? (this.lines[row] ?? 0) : 0;
  }

  /** 0-based number of the row's data line, counting lines left out. */
  ordinalOfRow(row: number): number {
    return this.ordinals[row] ?? 0;
  }
}

function wider(array: Uint32Array): Uint32Array<ArrayBuffer> {
  const copy = new Uint32Array(array.length * 2);
  copy.set(array);
  return copy;
}
