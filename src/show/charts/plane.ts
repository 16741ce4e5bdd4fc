import { ticks } from "./d3.ts";
import { gapsOf } from "./gaps.ts";
import type { Trace } from "./linePath.ts";
import type { PanelSeries } from "./panel.ts";
import { decimalsOf, type ValueScale } from "./valueScale.ts";

/** A line in a plane; `style` 1 to 4 chooses colour, dash and marker together. */
export interface PlaneLine {
  readonly id: string;
  /** Direct label in the right margin. */
  readonly words: string;
  readonly style: PanelSeries["style"];
  readonly trace: Trace;
}

/** The room between two lines over the same x. */
export interface PlaneBand {
  readonly style: PanelSeries["style"];
  readonly x: ArrayLike<number>;
  readonly low: ArrayLike<number>;
  readonly high: ArrayLike<number>;
}

/** A limit: across the plot at a height (`y`), or upright at an `x`. The forbidden side is above or to the right. */
export interface PlaneWall {
  readonly axis: "x" | "y";
  readonly value: number;
  readonly words: string;
  readonly source: string;
}

/** A point of its own with its label; a disc was measured, a ring was computed. Ends of intervals make bars. */
export interface PlaneMark {
  readonly x: number;
  readonly y: number;
  readonly shape: "disc" | "ring";
  readonly words: string;
  readonly barX: readonly [number, number] | null;
  readonly barY: readonly [number, number] | null;
}

export interface PlaneAxis {
  readonly from: number;
  readonly to: number;
  /** What the axis shows, with its unit. */
  readonly title: string;
  readonly ticks: readonly { readonly at: number; readonly words: string }[];
}

/** A chart of one quantity against another. */
export interface Plane {
  readonly id: string;
  readonly x: PlaneAxis;
  readonly y: ValueScale;
  readonly yTitle: string;
  readonly bands: readonly PlaneBand[];
  readonly dots: {
    readonly style: PanelSeries["style"];
    readonly points: readonly (readonly [number, number])[];
  } | null;
  readonly lines: readonly PlaneLine[];
  readonly walls: readonly PlaneWall[];
  readonly marks: readonly PlaneMark[];
}

const TICKS = 6;

/** A number axis from `from` to `to`, with round ticks. */
export function numberAxis(title: string, from: number, to: number): PlaneAxis {
  const found = ticks(from, to, TICKS);
  const decimals = decimalsOf(found);
  return { from, to, title, ticks: found.map((at) => ({ at, words: at.toFixed(decimals) })) };
}

/** A trace through all values of two arrays; it stays open where neighbours are further apart than `longestStep`. */
export function wholeTrace(
  x: ArrayLike<number>,
  y: ArrayLike<number>,
  longestStep = Number.POSITIVE_INFINITY,
): Trace {
  const range = { first: 0, last: x.length - 1 };
  return { x, y, ...range, gaps: gapsOf(x, y, range, longestStep) };
}
