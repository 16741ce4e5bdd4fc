import type { Recording } from "../../log/recording/index.ts";
import { workingChannel } from "./channelOrWhy.ts";
import type { RowRange } from "./segments.ts";

/**
 * Load of the motor above idle over the rows of a window, one-second centred mean: watts, else amps, else the
 * cube of shaft speed (thousands of rev/min), whichever the log allows. Only its shape is used. Missing is 0.
 */
export interface PowerTrace {
  /** `power`: from current; `speed`: the cube of shaft speed stands in. */
  readonly basis: "power" | "speed";
  /** Row of the recording that `load[0]` belongs to. */
  readonly firstRow: number;
  readonly load: Float32Array;
  readonly timeS: Float64Array;
}

const HALF_WINDOW_S = 0.5 + 1e-6;

/** @param idleA current with the motor stopped, A; 0 where it is not known */
export function powerTrace(recording: Recording, rows: RowRange, idleA: number): PowerTrace {
  const timeS = recording.timeS.subarray(rows.firstRow, rows.lastRow + 1);
  const load = centredMean(timeS, rawLoad(recording, rows, idleA));
  const basis = workingChannel(recording, "current") ? "power" : "speed";
  return { basis, firstRow: rows.firstRow, load, timeS };
}

function rawLoad(recording: Recording, rows: RowRange, idleA: number): Float32Array {
  const part = (values: Float64Array | null) => values?.subarray(rows.firstRow, rows.lastRow + 1) ?? null;
  const amps = part(workingChannel(recording, "current"));
  const volts = part(workingChannel(recording, "packVoltage"));
  const revs = part(workingChannel(recording, "shaftSpeed"));
  const load = new Float32Array(rows.lastRow - rows.firstRow + 1);
  for (let i = 0; i < load.length; i++) {
    const value = amps ? (amps[i]! - idleA) * (volts ? volts[i]! : 1) : revs ? (revs[i]! / 1000) ** 3 : 0;
    load[i] = value;
  }
  return load;
}

/** Mean of the known values within half a second on either side; 0 where there is none. */
function centredMean(timeS: Float64Array, raw: Float32Array): Float32Array {
  const mean = new Float32Array(raw.length);
  let sum = 0;
  let count = 0;
  let head = 0;
  let tail = 0;
  for (let i = 0; i < raw.length; i++) {
    for (; head < raw.length && timeS[head]! <= timeS[i]! + HALF_WINDOW_S; head++) {
      if (Number.isNaN(raw[head]!)) continue;
      sum += raw[head]!;
      count++;
    }
    for (; timeS[tail]! < timeS[i]! - HALF_WINDOW_S; tail++) {
      if (Number.isNaN(raw[tail]!)) continue;
      sum -= raw[tail]!;
      count--;
    }
    mean[i] = count > 0 ? sum / count : 0;
  }
  return mean;
}
