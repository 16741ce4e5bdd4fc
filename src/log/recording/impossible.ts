import { type ChannelName, channelFacts } from "../../base/channels/index.ts";

/** Rows whose value lies beyond what the channel's sensor can mean. Applies at any rate. */
export function impossibleRows(channel: ChannelName, values: Float64Array): number[] {
  const [low, high] = channelFacts(channel).possible;
  const rows: number[] = [];
  for (let row = 0; row < values.length; row++) {
    const value = values[row]!;
    if (value < low || value > high) rows.push(row);
  }
  return rows;
}
