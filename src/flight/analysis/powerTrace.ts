import { median, withSingleScratch } from "../../base/statistics/index.ts";
import { holeLimitS, missingStretches, type Recording } from "../../log/recording/index.ts";
import { centredMean } from "./centredMean.ts";
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
  /** 1 where no load is known within half a second; its load is written 0. */
  readonly isMissing: Uint8Array;
  readonly timeS: Float64Array;
}

const HALF_WINDOW_S = 0.5;

/** @param idleA current with the motor stopped, A; 0 where it is not known */
export function powerTrace(recording: Recording, rows: RowRange, idleA: number): PowerTrace {
  const timeS = recording.timeS.subarray(rows.firstRow, rows.lastRow + 1);
  const load = withSingleScratch(timeS.length, (raw) => {
    writeRawLoad(raw, recording, rows, idleA);
    return centredMean(timeS, raw, HALF_WINDOW_S);
  });
  const isMissing = new Uint8Array(load.length);
  for (let i = 0; i < load.length; i++) {
    if (!Number.isNaN(load[i]!)) continue;
    load[i] = 0;
    isMissing[i] = 1;
  }
  const basis = workingChannel(recording, "current") ? "power" : "speed";
  return { basis, firstRow: rows.firstRow, load, isMissing, timeS };
}

function writeRawLoad(load: Float32Array, recording: Recording, rows: RowRange, idleA: number): void {
  const part = (values: Float64Array | null) => values?.subarray(rows.firstRow, rows.lastRow + 1) ?? null;
  const amps = part(workingChannel(recording, "current"));
  const volts = part(workingChannel(recording, "packVoltage"));
  const revs = part(workingChannel(recording, "shaftSpeed"));
  // A row without volts takes the last ones before it, else the first of all: they change by a fifth over a flight.
  let lastV = volts?.find((value) => !Number.isNaN(value)) ?? 1;
  for (let i = 0; i < load.length; i++) {
    if (volts && !Number.isNaN(volts[i]!)) lastV = volts[i]!;
    load[i] = amps ? (amps[i]! - idleA) * lastV : revs ? (revs[i]! / 1000) ** 3 : 0;
  }
  if (amps && revs) fillFromSpeed(load, amps, revs, recording, rows);
}

const FEWEST_ROWS = 20;
/** Rows faster than this share of the highest speed teach what speed needs in flight. */
const FAST_SHARE = 0.5;

/** Where the current is missing for longer than a hole, the cube of shaft speed stands in, scaled to the rest. */
function fillFromSpeed(
  load: Float32Array,
  amps: Float64Array,
  revs: Float64Array,
  { timeS, stepS }: Recording,
  { firstRow, lastRow }: RowRange,
): void {
  const stretches = missingStretches(timeS.subarray(firstRow, lastRow + 1), amps, holeLimitS(stepS));
  if (stretches.length === 0) return;
  const fast = FAST_SHARE * revs.reduce((most, value) => Math.max(most, Number.isNaN(value) ? 0 : value), 0);
  const perCube: number[] = [];
  for (let i = 0; i < load.length; i++) {
    if (revs[i]! > fast && load[i]! > 0) perCube.push(load[i]! / revs[i]! ** 3);
  }
  if (perCube.length < FEWEST_ROWS) return;
  const scale = median(perCube);
  for (const stretch of stretches) {
    for (let i = stretch.firstRow; i <= stretch.lastRow; i++) load[i] = scale * revs[i]! ** 3;
  }
}
