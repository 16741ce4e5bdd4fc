import type { ChannelName } from "../../base/channels/index.ts";
import { type StuckProbe, stuckProbe } from "./stuckProbe.ts";
import { type ProbeJump, TEMPERATURES, temperatureJumps } from "./temperatureJumps.ts";

/** Rows of a temperature probe that say nothing: it jumped for good, or stuck at one reading. */
export type FailedProbe = { readonly channel: ChannelName } & (
  | ({ readonly kind: "jumped" } & ProbeJump)
  | ({ readonly kind: "stuck" } & StuckProbe)
);

/** Parts that warm within seconds of the load. A pack takes minutes: it may read one degree through landing and rest. */
const FOLLOWS_LOAD: readonly ChannelName[] = ["controllerTemperature", "motorTemperature"];

/** Probes of heated parts that failed during the log. Call it after jumps that come back are masked. */
export function failedProbes(
  timeS: Float64Array,
  channels: ReadonlyMap<ChannelName, Float64Array>,
): readonly FailedProbe[] {
  const amps = channels.get("current");
  return TEMPERATURES.flatMap((channel): FailedProbe[] => {
    const values = channels.get(channel);
    if (values === undefined) return [];
    const { forGood } = temperatureJumps(timeS, values);
    if (forGood !== null) return [{ channel, kind: "jumped", ...forGood }];
    if (amps === undefined || !FOLLOWS_LOAD.includes(channel)) return [];
    return stuckProbe(timeS, values, amps).map((stretch) => ({
      channel,
      kind: "stuck" as const,
      ...stretch,
    }));
  });
}

/** The channels with those rows missing. */
export function withoutFailedProbes(
  channels: ReadonlyMap<ChannelName, Float64Array>,
  failed: readonly FailedProbe[],
): ReadonlyMap<ChannelName, Float64Array> {
  if (failed.length === 0) return channels;
  const kept = new Map(channels);
  for (const { channel, firstRow, lastRow } of failed) {
    kept.set(
      channel,
      kept
        .get(channel)!
        .slice()
        .fill(Number.NaN, firstRow, lastRow + 1),
    );
  }
  return kept;
}
