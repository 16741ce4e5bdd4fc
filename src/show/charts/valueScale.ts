import { ticks } from "./d3.ts";

export interface ValueScale {
  readonly from: number;
  readonly to: number;
  readonly ticks: readonly number[];
  /** Decimals that tell the ticks apart. */
  readonly decimals: number;
}

const TICKS = 4;
/** Room above the highest and below the lowest value, as a share of the span, for labels. */
const ROOM = 0.22;

/** Room below a few negative values on an axis that would start at 0. */
const SLIVER = 0.02;

/**
 * Value axis of a panel from the lowest to the highest number to be shown; from 0 when `startsAtZero`
 * (lower only when there are negative values). A flat line gets a span of its own.
 */
export function valueScale(lowest: number, highest: number, startsAtZero: boolean): ValueScale {
  const low = startsAtZero ? Math.min(0, lowest) : lowest;
  const high = startsAtZero ? Math.max(0, highest) : highest;
  const span = high - low || Math.max(1, Math.abs(high) * 0.1);
  const from = startsAtZero ? low - (low < 0 ? span * SLIVER : 0) : low - span * ROOM;
  const to = high + span * ROOM;
  const found = ticks(from, to, TICKS);
  return { from, to, ticks: found, decimals: decimalsOf(found) };
}

/** Decimals that tell round ticks apart. */
export function decimalsOf(found: readonly number[]): number {
  const step = Math.abs((found[1] ?? 1) - (found[0] ?? 0)) || 1;
  return Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
}
