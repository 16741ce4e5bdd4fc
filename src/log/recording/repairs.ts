import type { ChannelName } from "../../base/channels/index.ts";
import { impossibleRows } from "./impossible.ts";
import type { Repair } from "./recording.ts";
import { spikeContext } from "./spikeContext.ts";
import { spikeRows } from "./spikes.ts";
import { TEMPERATURES, temperatureJumps } from "./temperatureJumps.ts";

/** Channels after masking, and every masked cell. */
export interface RepairedChannels {
  readonly channels: ReadonlyMap<ChannelName, Float64Array>;
  readonly repairs: readonly Repair[];
}

/**
 * Where masked values are left out: in a copy of the channel, or in the channel itself, whose array nobody may use
 * again (the result holds another view of it, so that nothing remembered of the old one is taken for the new).
 */
export type Masking = "copy" | "inPlace";

/** Masks what the sensor cannot mean. */
export function withoutImpossible(
  channels: ReadonlyMap<ChannelName, Float64Array>,
  lineOfRow: (row: number) => number,
  masking: Masking,
): RepairedChannels {
  return masked(channels, "impossible", lineOfRow, masking, impossibleRows);
}

/** Masks lone spikes, all judged on the values as they stand before the first is masked. */
export function withoutSpikes(
  timeS: Float64Array,
  channels: ReadonlyMap<ChannelName, Float64Array>,
  stepS: number,
  lineOfRow: (row: number) => number,
  masking: Masking,
): RepairedChannels {
  const context = spikeContext(timeS, channels, stepS);
  return masked(channels, "spike", lineOfRow, masking, (channel) => spikeRows(channel, context));
}

/** Masks temperatures that jump away and back as nothing physical does, however many rows long. */
export function withoutJumps(
  timeS: Float64Array,
  channels: ReadonlyMap<ChannelName, Float64Array>,
  lineOfRow: (row: number) => number,
  masking: Masking,
): RepairedChannels {
  return masked(channels, "jump", lineOfRow, masking, (channel, values) =>
    TEMPERATURES.includes(channel) ? temperatureJumps(timeS, values).rows : [],
  );
}

function masked(
  channels: ReadonlyMap<ChannelName, Float64Array>,
  kind: Repair["kind"],
  lineOfRow: (row: number) => number,
  masking: Masking,
  rowsToMask: (channel: ChannelName, values: Float64Array) => readonly number[],
): RepairedChannels {
  const result = new Map(channels);
  const repairs: Repair[] = [];
  // All are found before the first is masked: one channel tells on another.
  const found = [...channels].map(
    ([channel, values]) => [channel, values, rowsToMask(channel, values)] as const,
  );
  for (const [channel, values, rows] of found) {
    if (rows.length === 0) continue;
    const kept = masking === "copy" ? values.slice() : values.subarray(0);
    for (const row of rows) {
      repairs.push({ channel, row, line: lineOfRow(row), kind, value: values[row]! });
      kept[row] = Number.NaN;
    }
    result.set(channel, kept);
  }
  return { channels: result, repairs };
}
