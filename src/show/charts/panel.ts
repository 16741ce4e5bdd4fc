import { rememberedOf } from "../../base/remembered/index.ts";
import type { Trace } from "./linePath.ts";

/** One line of a panel. `style` 1 to 4 chooses colour, dash and marker together. */
export interface PanelSeries {
  readonly id: string;
  /** Direct label at the line's end, one or two words. */
  readonly words: string;
  readonly style: 1 | 2 | 3 | 4;
  readonly trace: Trace;
}

/** A limit of the fitted parts, drawn as a wall with its teeth on the forbidden side. */
export interface PanelLimit {
  readonly value: number;
  /** "limit 80 A". */
  readonly words: string;
  /** Whose limit it is; left out where there is little room. */
  readonly source: string;
  readonly forbidden: "above" | "below";
}

/** An extreme, marked where it happened. */
export interface PanelMark {
  readonly x: number;
  readonly value: number;
  readonly words: string;
  readonly side: "above" | "below";
  /** Where the label leans when several marks lie close; `middle` when it stands alone. */
  readonly lean: "middle" | "left" | "right";
}

export interface PanelPhase {
  readonly words: string;
  readonly fromX: number;
  readonly toX: number;
  /** 0 none, 1 light, 2 stronger. */
  readonly tint: 0 | 1 | 2;
}

/** A stretch shaded as having no data, with the words drawn in it. */
export interface PanelGap {
  readonly fromX: number;
  readonly toX: number;
  readonly words: string;
}

/** One chart over time. All panels of a flight share `fromX`..`toX`, seconds since the log began. */
export interface Panel {
  readonly id: string;
  readonly title: string;
  /** As written in the title. */
  readonly unit: string;
  /** Decimals a value of this panel is read with. */
  readonly decimals: number;
  readonly fromX: number;
  readonly toX: number;
  readonly startsAtZero: boolean;
  readonly series: readonly PanelSeries[];
  readonly limits: readonly PanelLimit[];
  readonly marks: readonly PanelMark[];
  readonly phases: readonly PanelPhase[];
  readonly gaps: readonly PanelGap[];
}

export interface TraceExtremes {
  readonly lowestRow: number;
  readonly highestRow: number;
}

/** Lowest and highest value of a trace, or null when it has none; looked for once per trace. */
export const traceExtremes = rememberedOf(searchedExtremes);

function searchedExtremes(trace: Trace): TraceExtremes | null {
  let lowestRow = -1;
  let highestRow = -1;
  for (let row = trace.first; row <= trace.last; row++) {
    const value = trace.y[row] ?? Number.NaN;
    if (Number.isNaN(value)) continue;
    if (lowestRow < 0 || value < (trace.y[lowestRow] ?? 0)) lowestRow = row;
    if (highestRow < 0 || value > (trace.y[highestRow] ?? 0)) highestRow = row;
  }
  return lowestRow < 0 ? null : { lowestRow, highestRow };
}

/** Last row of a trace that holds a value at or before `toX`, or -1. */
export function lastValueRow(trace: Trace, toX: number): number {
  for (let row = trace.last; row >= trace.first; row--) {
    if ((trace.x[row] ?? 0) <= toX && !Number.isNaN(trace.y[row] ?? Number.NaN)) return row;
  }
  return -1;
}
