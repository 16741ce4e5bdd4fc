import { type ChannelName, isCellChannel } from "../../base/channels/index.ts";
import { middleOf, SCALE_OF_MAD } from "../../base/statistics/index.ts";
import type { SpikeContext } from "./spikeContext.ts";

/** A move of another channel counts beyond this many scaled MAD of its own surroundings, */
const CLEAR_MADS = 3;
/** and beyond this share of its own range. */
const CLEAR_RANGE_SHARE = 0.03;
/** Points of the other channel on either side that may carry the move: sensors are read at different times. */
const LATEST = 1;
const AROUND = 3;

/** Which way a channel goes when the load on the pack rises: 1 up, -1 down, 0 when it says nothing. */
export function loadSign(channel: ChannelName): number {
  if (channel === "packVoltage" || isCellChannel(channel)) return -1;
  return channel === "current" || channel === "shaftSpeed" || channel === "throttle" ? 1 : 0;
}

/** True when another channel moves in the direction `sign` at this row: then the move is true. */
export function confirmsMove(other: ChannelName, row: number, sign: number, context: SpikeContext): boolean {
  const values = context.channels.get(other)!;
  const around = withoutTrend(valuesAround(values, row, context));
  if (around.length < AROUND + 1) return false;
  const ordered = Float64Array.from(around, (one) => one.value).sort();
  const middle = ordered[ordered.length >> 1]!;
  const distances = ordered.map((value) => Math.abs(value - middle)).sort();
  const range = context.spreads.get(other)!;
  const clear = Math.max(
    CLEAR_MADS * SCALE_OF_MAD * distances[distances.length >> 1]!,
    CLEAR_RANGE_SHARE * (range.high - range.low),
  );
  return around.some((one) => Math.abs(one.row - row) <= LATEST && (one.value - middle) * sign > clear);
}

interface PointAround {
  readonly row: number;
  readonly value: number;
}

/** On a slope every point is far from the median: the line through the middles of both halves is taken off. */
function withoutTrend(around: readonly PointAround[]): readonly PointAround[] {
  const count = around.length;
  if (count < 2 * AROUND + 1) return around;
  const middleFrom = (start: number) =>
    middleOf(around[start]!.value, around[start + 1]!.value, around[start + 2]!.value);
  const slope = (middleFrom(count - 3) - middleFrom(0)) / (count - 3);
  return around.map(({ row, value }, i) => ({ row, value: value - slope * i }));
}

function valuesAround(values: Float64Array, row: number, { timeS, holeLimitS }: SpikeContext): PointAround[] {
  const around: PointAround[] = [];
  const end = Math.min(values.length - 1, row + AROUND);
  for (let i = Math.max(0, row - AROUND); i <= end; i++) {
    const isNear = Math.abs(timeS[i]! - timeS[row]!) <= holeLimitS;
    if (isNear && !Number.isNaN(values[i]!)) around.push({ row: i, value: values[i]! });
  }
  return around;
}
