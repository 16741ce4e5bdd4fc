import { line } from "./d3.ts";
import { type Gap, splitAtGaps } from "./gaps.ts";
import { thinnedRows } from "./thinning.ts";

/** The box that lines are drawn in; the browser stretches it over the plot. Whole numbers keep paths short. */
export const LINE_BOX = { width: 8000, height: 1000 } as const;

/** One series over time: one `y` per `x`, NaN where missing; rows `first`..`last`, both included. */
export interface Trace {
  readonly x: ArrayLike<number>;
  readonly y: ArrayLike<number>;
  readonly first: number;
  readonly last: number;
  /** Where the line stays open. */
  readonly gaps: readonly Gap[];
}

/** The part of the plane that is drawn, and into how many pixel columns. */
export interface DrawnWindow {
  readonly fromX: number;
  readonly toX: number;
  readonly fromY: number;
  readonly toY: number;
  readonly columns: number;
}

/** SVG path data in LINE_BOX of a trace, thinned per pixel column. A value that stands alone gets a dot. */
export function linePath(trace: Trace, window: DrawnWindow): string {
  const rows = thinnedRows(trace.x, trace.y, trace, window);
  const perX = LINE_BOX.width / (window.toX - window.fromX);
  const perY = LINE_BOX.height / (window.toY - window.fromY);
  const shape = line<number>(
    (row) => ((trace.x[row] ?? 0) - window.fromX) * perX,
    (row) => (window.toY - (trace.y[row] ?? 0)) * perY,
  ).digits(0);
  return splitAtGaps(rows, trace.x, trace.gaps)
    .map((piece) => (shape(piece) ?? "").replace(/Z$/, "h1"))
    .join("");
}
