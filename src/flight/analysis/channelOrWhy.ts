import type { ChannelName } from "../../base/channels/index.ts";
import type { Recording } from "../../log/recording/index.ts";
import { noChannel } from "./sentences.ts";

/** A channel's row array, or the reason why nothing can rest on it. */
export type ChannelOrWhy =
  | { readonly values: Float64Array; readonly why: null }
  | { readonly values: null; readonly why: string };

/** The row array of a channel whose sensor works; a channel that is absent or dead says why. */
export function channelOrWhy(recording: Recording, channel: ChannelName): ChannelOrWhy {
  const dead = recording.dead.find((one) => one.channel === channel);
  if (dead) return { values: null, why: dead.why };
  const values = recording.channels.get(channel);
  return values ? { values, why: null } : { values: null, why: noChannel(channel) };
}

/** The row array of a channel, or null where it is absent or its sensor is dead. */
export function workingChannel(recording: Recording, channel: ChannelName): Float64Array | null {
  return channelOrWhy(recording, channel).values;
}
