import type { ChannelName } from "../../src/base/channels/index.ts";
import { type DeadChannel, type Hole, holeLimitS, type Recording } from "../../src/log/recording/index.ts";

/** What a test's recording differs in from a clean one. */
export interface RecordingParts {
  readonly timeS: Float64Array;
  readonly channels: ReadonlyMap<ChannelName, Float64Array>;
  readonly dead?: readonly DeadChannel[];
  /** Seconds after which the clock jumped by an unknown length. */
  readonly jumpsAtS?: readonly number[];
  readonly clockTextOfRow?: (row: number) => string | null;
}

/** A recording of clean rows: holes are found from time, voltage and current, nothing is repaired. Line 2 is row 0. */
export function recordingOf(parts: RecordingParts): Recording {
  const { timeS, channels } = parts;
  const isUsable = (row: number) =>
    !Number.isNaN(channels.get("packVoltage")?.[row] ?? 0) &&
    !Number.isNaN(channels.get("current")?.[row] ?? 0);
  const usable: number[] = [];
  for (let row = 0; row < timeS.length; row++) if (isUsable(row)) usable.push(row);
  const steps = usable.slice(1).map((row, index) => timeS[row]! - timeS[usable[index]!]!);
  const stepS = steps.toSorted((one, other) => one - other)[Math.floor(steps.length / 2)] ?? 1;
  const jumps = parts.jumpsAtS ?? [];
  const holes: Hole[] = [];
  usable.slice(1).forEach((rowAfter, index) => {
    const rowBefore = usable[index]!;
    const [startS, endS] = [timeS[rowBefore]!, timeS[rowAfter]!];
    const isUnknownLength = jumps.some((atS) => atS >= startS && atS < endS);
    if (endS - startS > holeLimitS(stepS) || isUnknownLength) {
      holes.push({ rowBefore, rowAfter, startS, endS, isUnknownLength });
    }
  });
  return {
    rows: timeS.length,
    dataLines: timeS.length,
    rowsUsed: usable.length,
    durationS: (timeS.at(-1) ?? 0) - (timeS[0] ?? 0),
    timeS,
    channels,
    lineOfRow: (row) => row + 2,
    clockTextOfRow: parts.clockTextOfRow ?? (() => null),
    stepS,
    holes,
    repairs: [],
    dead: parts.dead ?? [],
    notices: [],
  };
}
