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

/** Masks what the sensor cannot mean. */
export function withoutImpossible(
  channels: ReadonlyMap<ChannelName, Float64Array>,
  lineOfRow: (row: number) => number,
): RepairedChannels {
  return masked(channels, "impossible", lineOfRow, impossibleRows);
}

/** Masks lone spikes, all judged on the values as they stand before the first is masked. */
export function withoutSpikes(
  timeS: Float64Array,
  channels: ReadonlyMap<ChannelName, Float64Array>,
  stepS: number,
  lineOfRow: (row: number) => number,
): RepairedChannels {
  const context = spikeContext(timeS, channels, stepS);
  return masked(channels, "spike", lineOfRow, (channel) => spikeRows(channel, context));
}

/** Masks temperatures that jump away and back as nothing physical does, however many rows long. */
export function withoutJumps(
  timeS: Float64Array,
  channels: ReadonlyMap<ChannelName, Float64Array>,
  lineOfRow: (row: number) => number,
): RepairedChannels {
  return masked(channels, "jump", lineOfRow, (channel, values) =>
    TEMPERATURES.includes(channel) ? temperatureJumps(timeS, values).rows : [],
  );
}

function masked(
  channels: ReadonlyMap<ChannelName, Float64Array>,
  kind: Repair["kind"],
  lineOfRow: (row: number) => number,
  rowsToMask: (channel: ChannelName, values: Float64Array) => readonly number[],
): RepairedChannels {
  const result = new Map(channels);
  const repairs: Repair[] = [];
  for (const [channel, values] of channels) {
    const rows = rowsToMask(channel, values);
    if (rows.length === 0) continue;
    const kept = values.slice();
    for (const row of rows) {
      repairs.push({ channel, row, line: lineOfRow(row), kind, value: values[row]! });
      kept[row] = Number.NaN;
    }
    result.set(channel, kept);
  }
  return { channels: result, repairs };
}
