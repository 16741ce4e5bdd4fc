import { type ChannelName, isCellChannel } from "../../base/channels/index.ts";
import type { Recording } from "../../log/recording/index.ts";
import { workingChannel } from "./channelOrWhy.ts";

/** A logged channel whose sensor works and that holds a value at all; null otherwise. */
export function filledChannel(recording: Recording, channel: ChannelName): Float64Array | null {
  const values = workingChannel(recording, channel);
  return values?.some((value) => !Number.isNaN(value)) ? values : null;
}

/** Volts times amps of each row, W, as the highest power is defined; NaN where either is missing. */
export function powerOfRows(recording: Recording): Float64Array | null {
  const volts = filledChannel(recording, "packVoltage");
  const amps = filledChannel(recording, "current");
  if (volts === null || amps === null) return null;
  return volts.map((volt, row) => volt * amps[row]!);
}

/** Pack volts of each row over the number of cells in series; null without pack volts. */
export function meanCellOfRows(recording: Recording, cells: number): Float64Array | null {
  return filledChannel(recording, "packVoltage")?.map((volt) => volt / cells) ?? null;
}

/** Lowest and highest cell of each row when cells are logged one by one, V; null when they are not. */
export function cellRangeOfRows(
  recording: Recording,
): { readonly lowest: Float64Array; readonly highest: Float64Array } | null {
  const names = [...recording.channels.keys()].filter(isCellChannel);
  const cells = names.flatMap((name) => filledChannel(recording, name) ?? []);
  if (cells.length === 0) return null;
  const lowest = new Float64Array(recording.rows).fill(Number.NaN);
  const highest = new Float64Array(recording.rows).fill(Number.NaN);
  for (const cell of cells) {
    for (let row = 0; row < cell.length; row++) {
      const volt = cell[row]!;
      if (Number.isNaN(volt)) continue;
      if (!(volt >= lowest[row]!)) lowest[row] = volt;
      if (!(volt <= highest[row]!)) highest[row] = volt;
    }
  }
  return { lowest, highest };
}
