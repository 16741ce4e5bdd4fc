import type { ChannelName } from "../../src/base/channels/index.ts";
import type { Recording } from "../../src/log/recording/index.ts";
import { type RecordingParts, recordingOf } from "./recordingOf.ts";

/** A stretch of a made-up log: constant values, `lengthS` long. Channels left out keep their resting value. */
export interface Stretch {
  readonly lengthS: number;
  readonly amps: number;
  readonly rpm?: number;
  readonly altitudeM?: number;
  /** Open-circuit volts; the log holds these less 0.05 ohm times the amps. */
  readonly openV?: number;
  readonly throttlePct?: number;
  /** Seconds of clock that pass without rows before this stretch. */
  readonly holeBeforeS?: number;
}

export const REST: Stretch = { lengthS: 15, amps: 0.2 };
export const TAXI: Stretch = { lengthS: 10, amps: 2.5, rpm: 2000 };
export const FLIGHT: Stretch = { lengthS: 120, amps: 30, rpm: 6000, altitudeM: 50 };
export const OPEN_V = 33.6;
const PACK_OHM = 0.05;

type Logged = "packVoltage" | "current" | "shaftSpeed" | "altitude" | "throttle" | "controllerTemperature";
const VALUE_OF: Readonly<Record<Logged, (stretch: Stretch) => number>> = {
  packVoltage: ({ openV = OPEN_V, amps }) => openV - PACK_OHM * amps,
  current: ({ amps }) => amps,
  shaftSpeed: ({ rpm = 0 }) => rpm,
  altitude: ({ altitudeM = 0 }) => altitudeM,
  throttle: ({ throttlePct = 0 }) => throttlePct,
  controllerTemperature: ({ amps }) => 20 + amps,
};

/** The same log with one channel's values missing from `fromS` to before `toS`; its rows stay. */
export function withMissing(
  recording: Recording,
  channel: ChannelName,
  fromS: number,
  toS: number,
): Recording {
  const channels = new Map(recording.channels);
  const values = channels
    .get(channel)!
    .map((value, row) =>
      recording.timeS[row]! >= fromS && recording.timeS[row]! < toS ? Number.NaN : value,
    );
  channels.set(channel, values);
  return recordingOf({ timeS: recording.timeS, channels });
}

/** A log of constant stretches at `rateHz`, with exactly the channels named. */
export function syntheticRecording(
  stretches: readonly Stretch[],
  channels: readonly Logged[] = ["packVoltage", "current"],
  rateHz = 5,
  more: Partial<RecordingParts> = {},
): Recording {
  const timeS: number[] = [];
  const values = new Map<Logged, number[]>(channels.map((channel) => [channel, []]));
  let startS = 0;
  for (const stretch of stretches) {
    startS += stretch.holeBeforeS ?? 0;
    for (let row = 0; row < stretch.lengthS * rateHz; row++) {
      timeS.push(startS + row / rateHz);
      for (const channel of channels) values.get(channel)!.push(VALUE_OF[channel](stretch));
    }
    startS += stretch.lengthS;
  }
  const arrays = new Map<ChannelName, Float64Array>();
  for (const [channel, list] of values) arrays.set(channel, Float64Array.from(list));
  return recordingOf({ timeS: Float64Array.from(timeS), channels: arrays, ...more });
}
