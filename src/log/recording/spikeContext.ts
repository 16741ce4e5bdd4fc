import type { ChannelName } from "../../base/channels/index.ts";
import { holeLimitS } from "./recording.ts";
import { type Spread, spreadOf } from "./spread.ts";

/** Everything that a lone sample is judged by. */
export interface SpikeContext {
  readonly timeS: Float64Array;
  readonly channels: ReadonlyMap<ChannelName, Float64Array>;
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
  return { timeS, channels, spreads, stepS, holeLimitS: holeLimitS(stepS) };
}
