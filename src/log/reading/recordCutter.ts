import { MOST_LINES_OF_A_CELL } from "./limits.ts";
import { quoteState } from "./quotes.ts";

interface HeldLine {
  readonly text: string;
  readonly line: number;
}

type Take = (record: string, line: number) => void;
type Broken = (line: number) => void;

/** Stands for a quote that opens nothing: no number has it, so its cell cannot be misread. */
const STRAY_QUOTE = "\ufffd";

/**
 * Joins lines to records where a quoted cell spans lines. A quote that does not close, or would swallow a line
 * that is a row by itself, costs its own cell, or its line when the cells do not add up.
 */
export class RecordCutter {
  private held: HeldLine[] = [];

  constructor(
    private readonly delimiter: string,
    private readonly isRow: (line: string) => boolean,
  ) {}

  get isOpen(): boolean {
    return this.held.length > 0;
  }

  add(text: string, line: number, take: Take, broken: Broken): void {
    const isOpen = this.isOpen;
    const isPlain = !isOpen && !text.includes('"');
    const state = isPlain ? "closed" : quoteState(text, this.delimiter, isOpen);
    this.held.push({ text, line });
    const swallowsRow = isOpen && this.isRow(text);
    const mayClose = state === "open" && !swallowsRow && this.held.length <= MOST_LINES_OF_A_CELL;
    if (state === "closed") this.release(take);
    else if (!mayClose) this.giveUp(take, broken);
  }

  /** At the end of the file an open quote never closes. */
  end(take: Take, broken: Broken): void {
    while (this.isOpen) this.giveUp(take, broken);
  }

  private release(take: Take): void {
    take(this.held.map((each) => each.text).join("\n"), this.held[0]!.line);
    this.held = [];
  }

  /** The first held line is cut at every delimiter; the others are read again by themselves. */
  private giveUp(take: Take, broken: Broken): void {
    const [first, ...others] = this.held;
    this.held = [];
    if (first === undefined) return;
    broken(first.line);
    take(first.text.replaceAll('"', STRAY_QUOTE), first.line);
    for (const each of others) this.add(each.text, each.line, take, broken);
  }
}
