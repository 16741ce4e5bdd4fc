import type { ChannelName } from "../../base/channels/index.ts";
import { holeLimitS } from "./recording.ts";
import { type Spread, spreadOf } from "./spread.ts";

/** Everything that a lone sample is judged by. */
export interface SpikeContext {
  readonly timeS: Float64Array;
  readonly channels: ReadonlyMap<ChannelName, Float64Array>;
  /** 0, 1, 2 ...: for channels without a missing value. */
  readonly everyRow: Int32Array;
  readonly spreads: ReadonlyMap<ChannelName, Spread>;
  /** Median step between usable rows. */
  readonly stepS: number;
  readonly holeLimitS: number;
}

export function spikeContext(
  timeS: Float64Array,
  channels: ReadonlyMap<ChannelName, Float64Array>,
  stepS: number,
): SpikeContext {
  const spreads = new Map([...channels].map(([channel, values]) => [channel, spreadOf(values)]));
  const everyRow = new Int32Array(timeS.length);
  for (let row = 0; row < everyRow.length; row++) everyRow[row] = row;
  return { timeS, channels, everyRow, spreads, stepS, holeLimitS: holeLimitS(stepS) };
}
