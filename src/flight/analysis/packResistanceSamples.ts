import { holeLimitS, type Recording } from "../../log/recording/index.ts";
import { workingChannel } from "./channelOrWhy.ts";
import type { RowRange } from "./segments.ts";

/** Volts and amps at the same instants, without missing values. */
export interface LoadSamples {
  readonly timeS: Float64Array;
  readonly packV: Float64Array;
  readonly currentA: Float64Array;
  /** Typical spacing, seconds. */
  readonly stepS: number;
  /** Neighbours further apart than this have a hole between them. */
  readonly holeS: number;
}

/** Faster logs are averaged to this spacing: a pack has nothing to say within a tenth of a second. */
const FINEST_STEP_S = 0.05;
/** Longer logs are averaged more coarsely, so that the cost of a fit stays bounded. */
const MOST_SAMPLES = 40_000;

/** The usable rows of a range, averaged over equal spans of time where the log is faster than needed. */
export function loadSamples(recording: Recording, range: RowRange): LoadSamples | null {
  const packV = workingChannel(recording, "packVoltage");
  const currentA = workingChannel(recording, "current");
  if (packV === null || currentA === null) return null;
  const { timeS } = recording;
  const spanS = timeS[range.lastRow]! - timeS[range.firstRow]!;
  const binS = Math.max(FINEST_STEP_S * 0.99, spanS / MOST_SAMPLES);
  const most = Math.min(range.lastRow - range.firstRow, Math.floor(spanS / binS)) + 2;
  const out = { time: new Float64Array(most), volts: new Float64Array(most), amps: new Float64Array(most) };
  let count = 0;
  const bin = { start: Number.NEGATIVE_INFINITY, count: 0, time: 0, volts: 0, amps: 0 };
  const close = () => {
    if (bin.count === 0) return;
    out.time[count] = bin.time / bin.count;
    out.volts[count] = bin.volts / bin.count;
    out.amps[count++] = bin.amps / bin.count;
  };
  for (let row = range.firstRow; row <= range.lastRow; row++) {
    const sum = packV[row]! + currentA[row]! + timeS[row]!;
    if (!Number.isFinite(sum)) continue;
    if (timeS[row]! - bin.start >= binS) {
      close();
      bin.start = timeS[row]!;
      bin.count = bin.time = bin.volts = bin.amps = 0;
    }
    bin.count++;
    bin.time += timeS[row]!;
    bin.volts += packV[row]!;
    bin.amps += currentA[row]!;
  }
  close();
  const stepS = Math.max(recording.stepS, binS);
  return {
    timeS: out.time.subarray(0, count),
    packV: out.volts.subarray(0, count),
    currentA: out.amps.subarray(0, count),
    stepS,
    holeS: holeLimitS(stepS),
  };
}
