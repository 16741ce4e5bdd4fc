import type { ChannelName } from "../../base/channels/index.ts";
import type { SensorCorrections } from "./recording.ts";
import { rowsOf } from "./rows.ts";

/** What a logged value of this channel is multiplied by. */
export function correctionOf(channel: ChannelName, corrections: SensorCorrections): number {
  if (channel === "current") return corrections.currentScale;
  return channel === "shaftSpeed" ? 1 / corrections.rpmDivisor : 1;
}

/** The channels in the order of the clock, corrected. An array that needs no change is the log's own. */
export function correctedChannels(
  channels: ReadonlyMap<ChannelName, Float64Array>,
  sourceRows: Int32Array | null,
  corrections: SensorCorrections,
): ReadonlyMap<ChannelName, Float64Array> {
  const corrected = new Map<ChannelName, Float64Array>();
  for (const [channel, values] of channels) {
    const ordered = rowsOf(values, sourceRows);
    const factor = correctionOf(channel, corrections);
    corrected.set(channel, factor === 1 ? ordered : ordered.map((value) => value * factor));
  }
  return corrected;
}
