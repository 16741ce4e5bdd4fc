/** A line that is no row: an event, a cut row, a second preamble, or part of a footer; what follows decides. */
interface OddLine {
  readonly line: number;
  readonly isAfterBlank: boolean;
  readonly isText: boolean;
}

/** Lines since the last row that are no rows themselves. */
export class OddLines {
  private waiting: OddLine[] = [];
  private hadSome = false;

  get isEmpty(): boolean {
    return this.waiting.length === 0;
  }

  /** At the end of a file: behind a blank line, or words only and the first such lines of the file. */
  get isFooter(): boolean {
    const first = this.waiting[0];
    return first?.isAfterBlank === true || (!this.hadSome && this.waiting.every((each) => each.isText));
  }

  add(line: number, isAfterBlank: boolean, isText: boolean): void {
    this.waiting.push({ line, isAfterBlank, isText });
  }

  /** Before a header that comes again they are its preamble. */
  forget(): void {
    this.waiting = [];
  }

  /** Hands the lines over. */
  release(isFooter: boolean): readonly number[] {
    const lines = this.waiting.map((each) => each.line);
    this.waiting = [];
    this.hadSome ||= !isFooter;
    return lines;
  }
}
