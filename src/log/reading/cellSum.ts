import { type ChannelName, isCellChannel } from "../../base/channels/index.ts";

/**
 * Pack voltage as the sum of cells 1 to N when every one of them is logged; null otherwise, or when N is not
 * the known count. A row without one of its cells has no sum.
 */
export function cellSum(
  channels: ReadonlyMap<ChannelName, Float64Array>,
  cells: number | null,
): { readonly values: Float64Array; readonly cellCount: number } | null {
  const logged = [...channels].filter(([channel]) => isCellChannel(channel));
  const cellCount = logged.length;
  const isComplete = logged.every(([channel]) => Number(channel.slice("cellVoltage".length)) <= cellCount);
  if (cellCount < 2 || !isComplete || (cells !== null && cells !== cellCount)) return null;
  const values = new Float64Array(logged[0]![1].length);
  for (const [, volts] of logged) for (let row = 0; row < values.length; row++) values[row]! += volts[row]!;
  return { values, cellCount };
}
