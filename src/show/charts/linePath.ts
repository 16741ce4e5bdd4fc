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

/**
 * SVG path data in LINE_BOX of a trace, thinned per pixel column: each piece begins at a whole point and goes on by whole
 * steps from point to point, which takes half the text. A value that stands alone gets a dot.
 */
export function linePath(trace: Trace, window: DrawnWindow): string {
  const rows = thinnedRows(trace.x, trace.y, trace, window);
  const perX = LINE_BOX.width / (window.toX - window.fromX);
  const perY = LINE_BOX.height / (window.toY - window.fromY);
  return splitAtGaps(rows, trace.x, trace.gaps)
    .map((piece) =>
      piecePath(
        piece.map((row) => [
          Math.round(((trace.x[row] ?? 0) - window.fromX) * perX),
          Math.round((window.toY - (trace.y[row] ?? 0)) * perY),
        ]),
      ),
    )
    .join("");
}

function piecePath(points: readonly (readonly [number, number])[]): string {
  const [first] = points;
  if (first === undefined) return "";
  if (points.length === 1) return `M${first[0]},${first[1]}h1`;
  let text = `M${first[0]},${first[1]}l`;
  points.forEach(([x, y], k) => {
    const before = points[k - 1];
    if (before === undefined) return;
    const step = `${x - before[0]},${y - before[1]}`;
    text += k === 1 || step.startsWith("-") ? step : ` ${step}`;
  });
  return text;
}
