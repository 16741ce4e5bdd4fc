import { strictNumber } from "./strictNumber.ts";

/** Turns the cells of a row into numbers and follows the decimal mark when it changes on the way. */
export class RowNumbers {
  /** Numbers of the last row converted, NaN where a cell is none. */
  values: Float64Array;

  constructor(
    width: number,
    public mark: "." | ",",
    /** The user named the mark: never another. */
    private readonly isMarkGiven: boolean,
  ) {
    this.values = new Float64Array(width);
  }

  resize(width: number): void {
    this.values = new Float64Array(width);
  }

  /** Converts a row; returns how many cells are numbers. `onSwitch` is called when the row changes the mark. */
  convert(cells: readonly string[], onSwitch: () => void): number {
    const found = this.convertWith(cells, this.mark);
    if (found === cells.length || this.isMarkGiven) return found;
    const other = this.mark === "." ? "," : ".";
    if (!this.mayHaveMark(cells, other)) return found;
    const foundWithOther = this.convertWith(cells, other);
    if (foundWithOther <= found) return this.convertWith(cells, this.mark);
    this.mark = other;
    onSwitch();
    return foundWithOther;
  }

  private mayHaveMark(cells: readonly string[], mark: "." | ","): boolean {
    return cells.some((cell, at) => {
      return Number.isNaN(this.values[at]) && cell.includes(mark) && !Number.isNaN(strictNumber(cell, mark));
    });
  }

  private convertWith(cells: readonly string[], mark: "." | ","): number {
    let found = 0;
    for (let at = 0; at < cells.length; at++) {
      const value = strictNumber(cells[at]!, mark);
      this.values[at] = value;
      if (!Number.isNaN(value)) found++;
    }
    return found;
  }
}
