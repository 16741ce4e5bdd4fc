import { rememberedOf } from "../../base/remembered/index.ts";
import { withSingleScratch } from "../../base/statistics/index.ts";
import { holeLimitS, missingStretches, type Recording } from "../../log/recording/index.ts";
import { centredMean } from "./centredMean.ts";
import { workingChannel } from "./channelOrWhy.ts";
import {
  CURRENT_LEVELS,
  type RunningThreshold,
  runningThreshold,
  SHAFT_SPEED_LEVELS,
} from "./runningThreshold.ts";

/** Which rows have the motor running, and by which levels that was told. */
export interface MotorRunning {
  /** 1 where the motor runs, 0 where it does not; one entry a row. */
  readonly isRunning: Uint8Array;
  /** Null where the channel is absent, dead, or never leaves idle. */
  readonly current: RunningThreshold | null;
  readonly shaftSpeed: RunningThreshold | null;
}

/**
 * Load grows with the cube of shaft speed, and in the air it is down to a fifth of that on the ground. Where
 * the load of this speed on the ground would be this many thresholds, an idle current means that the air
 * drives the propeller.
 */
const CLEAR_LOAD_IN_THRESHOLDS = 8;

/**
 * The motor runs when current or shaft speed says so; a propeller that only windmills (speed without the
 * current that speed needs) does not count as running. Null when neither channel can tell. Recordings are never
 * changed: the question of the cell count and the analysis share one look.
 */
export const motorRunning = rememberedOf(runningOf);

function runningOf(recording: Recording): MotorRunning | null {
  const { timeS, stepS } = recording;
  const amps = workingChannel(recording, "current");
  const revs = workingChannel(recording, "shaftSpeed");
  if (amps === null && revs === null) return null;
  const current = amps && runningThreshold(timeS, amps, stepS, CURRENT_LEVELS, 2 * HALF_WINDOW_S);
  const shaftSpeed = revs && runningThreshold(timeS, revs, stepS, SHAFT_SPEED_LEVELS, 0);
  const byCurrent = withSingleScratch(recording.rows, (scratch) => {
    const steadyA = amps && current ? centredMean(timeS, amps, HALF_WINDOW_S, scratch) : null;
    return saysRunning(steadyA, current, recording.rows);
  });
  if (amps && current) trimEdges(byCurrent, amps, timeS, current.offAt);
  const bySpeed = saysRunning(revs, shaftSpeed, recording.rows);
  if (amps && revs && current && shaftSpeed)
    dropWindmilling(bySpeed, byCurrent, amps, revs, current, shaftSpeed);
  if (amps && revs && shaftSpeed) leaveToSpeed(byCurrent, amps, revs, timeS, holeLimitS(stepS));
  for (let row = 0; row < byCurrent.length; row++) byCurrent[row]! |= bySpeed[row]!;
  return { isRunning: byCurrent, current, shaftSpeed };
}

/** The current is averaged over half a second, so that an idling motor shows through its noise. */
const HALF_WINDOW_S = 0.25;

/** What one channel says, row by row, with hysteresis; a missing value keeps the last word. */
function saysRunning(
  values: Float64Array | Float32Array | null,
  threshold: RunningThreshold | null,
  rows: number,
): Uint8Array {
  const says = new Uint8Array(rows);
  if (values === null || threshold === null) return says;
  let isRunning = 0;
  for (let row = 0; row < rows; row++) {
    const value = values[row]!;
    if (value >= threshold.onAt) isRunning = 1;
    else if (value <= threshold.offAt) isRunning = 0;
    says[row] = isRunning;
  }
  return says;
}

/** Where the current has been missing for longer than a hole, shaft speed alone says whether the motor runs. */
function leaveToSpeed(
  byCurrent: Uint8Array,
  amps: Float64Array,
  revs: Float64Array,
  timeS: Float64Array,
  limitS: number,
): void {
  for (const { firstRow, lastRow } of missingStretches(timeS, amps, limitS)) {
    for (let row = firstRow; row <= lastRow; row++) if (!Number.isNaN(revs[row]!)) byCurrent[row] = 0;
  }
}

/** The average reaches past the edges of a run by its half window: rows there that read idle are idle. */
function trimEdges(says: Uint8Array, amps: Float64Array, timeS: Float64Array, offAt: number): void {
  for (const step of [1, -1] as const) {
    const start = step === 1 ? 1 : says.length - 2;
    for (let row = start; row >= 0 && row < says.length; row += step) {
      if (says[row] === 0 || says[row - step] === 1) continue;
      const edgeS = timeS[row]!;
      while (says[row] === 1 && !(amps[row]! > offAt) && Math.abs(timeS[row]! - edgeS) < 2 * HALF_WINDOW_S) {
        says[row] = 0;
        row += step;
      }
    }
  }
}

function dropWindmilling(
  bySpeed: Uint8Array,
  byCurrent: Uint8Array,
  amps: Float64Array,
  revs: Float64Array,
  current: RunningThreshold,
  shaftSpeed: RunningThreshold,
): void {
  const clearLoadA = CLEAR_LOAD_IN_THRESHOLDS * (current.onAt - current.idle);
  const ampsPerCube = (current.top - current.idle) / shaftSpeed.top ** 3;
  const clearSpeed = Math.cbrt(clearLoadA / ampsPerCube);
  for (let row = 0; row < bySpeed.length; row++) {
    const isDriven = revs[row]! >= clearSpeed && byCurrent[row] === 0 && !Number.isNaN(amps[row]!);
    if (isDriven) bySpeed[row] = 0;
  }
}
