import { type ChannelName, isCellChannel } from "../../base/channels/index.ts";
import { SCALE_OF_MAD } from "../../base/statistics/index.ts";
import { confirmsMove, loadSign } from "./confirmation.ts";
import type { SpikeContext } from "./spikeContext.ts";
import { centre, halfWindow, isWholePiece, orderedWindow, type PresentRows, rowAt } from "./windowOfSeven.ts";

/** Slower logs show a true peak in one row only: nothing is judged a spike there. */
const SLOWEST_STEP_S = 0.25;
const MAD_LIMIT = 3;
const RANGE_SHARE = 0.1;
/** A neighbour that goes more than this share of the way belongs to the same peak. */
const SHARED_MOVE = 0.2;

/** Least move that can be a spike, in the channel's unit; channels not named here are left alone. */
const LEAST_MOVE: Readonly<Partial<Record<ChannelName, number>>> = {
  current: 1,
  packVoltage: 0.1,
  shaftSpeed: 200,
  controllerTemperature: 3,
  motorTemperature: 3,
  packTemperature: 3,
  ambientTemperature: 3,
  altitude: 5,
  airspeed: 3,
  groundSpeed: 3,
  chargeCounter: 20,
};
const LEAST_CELL_MOVE_V = 0.1;

/**
 * Rows of a channel whose value is a lone spike. All must hold: 4 or more rows a second; more than 3 scaled
 * MAD and more than 10 % of the 1st-99th percentile range (and a least move) from the median of the 7 points
 * centred on it; the neighbours do not share the move; no other channel confirms it; not among the first or
 * last 3 of a piece. The 3-MAD part alone is the filter of Hampel (Journal of the American Statistical
 * Association 69, 1974); it would cut true peaks, hence the rest.
 */
export function spikeRows(channel: ChannelName, context: SpikeContext): number[] {
  const least = isCellChannel(channel) ? LEAST_CELL_MOVE_V : LEAST_MOVE[channel];
  const isSlow = !(context.stepS > 0 && context.stepS <= SLOWEST_STEP_S);
  if (least === undefined || isSlow) return [];
  const values = context.channels.get(channel)!;
  const present = presentRows(values);
  const range = context.spreads.get(channel)!;
  const leastMove = Math.max(least, RANGE_SHARE * (range.high - range.low));
  const clear = (1 - SHARED_MOVE) * leastMove;
  const places = present === null ? peaksOf(values, clear) : peaksAmong(values, present, clear);
  return places
    .filter((at) => isSpike(channel, context, present, at, leastMove))
    .map((at) => rowAt(present, at));
}

/** A cheap first look that never rejects a spike: rows whose neighbours both lie clearly on one side. */
function peaksOf(values: Float64Array, clear: number): number[] {
  const peaks: number[] = [];
  for (let row = halfWindow; row < values.length - halfWindow; row++) {
    const fromBefore = values[row]! - values[row - 1]!;
    const fromNext = values[row]! - values[row + 1]!;
    if (fromBefore >= clear ? fromNext >= clear : fromBefore <= -clear && fromNext <= -clear) peaks.push(row);
  }
  return peaks;
}

/** The same among some rows; gives places in `present`. */
function peaksAmong(values: Float64Array, present: Int32Array, clear: number): number[] {
  const there = new Float64Array(present.length);
  for (let at = 0; at < there.length; at++) there[at] = values[present[at]!]!;
  return peaksOf(there, clear);
}

function isSpike(
  channel: ChannelName,
  context: SpikeContext,
  present: PresentRows,
  at: number,
  leastMove: number,
): boolean {
  if (!isWholePiece(context.timeS, present, at, context.holeLimitS)) return false;
  const values = context.channels.get(channel)!;
  const middle = centre(orderedWindow(values, present, at));
  const move = values[rowAt(present, at)]! - middle;
  if (Math.abs(move) <= leastMove) return false;
  if (Math.abs(move) <= MAD_LIMIT * scaledMadOfWindow(values, present, at, middle)) return false;
  const shared = Math.max(
    (values[rowAt(present, at - 1)]! - middle) / move,
    (values[rowAt(present, at + 1)]! - middle) / move,
  );
  if (shared > SHARED_MOVE) return false;
  return !isConfirmed(channel, context, rowAt(present, at), Math.sign(move));
}

function scaledMadOfWindow(values: Float64Array, present: PresentRows, at: number, middle: number): number {
  const distances = new Float64Array(2 * halfWindow + 1);
  for (let i = -halfWindow; i <= halfWindow; i++) {
    distances[i + halfWindow] = Math.abs(values[rowAt(present, at + i)]! - middle);
  }
  return SCALE_OF_MAD * distances.sort()[halfWindow]!;
}

function isConfirmed(channel: ChannelName, context: SpikeContext, row: number, sign: number): boolean {
  const load = loadSign(channel) * sign;
  if (load === 0) return false;
  for (const other of context.channels.keys()) {
    if (other === channel || loadSign(other) === 0) continue;
    if (confirmsMove(other, row, load * loadSign(other), context)) return true;
  }
  return false;
}

function presentRows(values: Float64Array): PresentRows {
  if (!values.includes(Number.NaN)) return null;
  const rows = new Int32Array(values.length);
  let count = 0;
  for (let row = 0; row < values.length; row++) if (!Number.isNaN(values[row]!)) rows[count++] = row;
  return rows.subarray(0, count);
}
