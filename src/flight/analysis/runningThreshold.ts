import { median, quantile, SCALE_OF_MAD } from "../../base/statistics/index.ts";

/**
 * Where a channel begins and ceases to say that the motor runs, in the channel's unit. `onAt` is above
 * `offAt`, so that noise at one level does not switch it.
 */
export interface RunningThreshold {
  readonly idle: number;
  /** Highest one-second mean of the log. */
  readonly top: number;
  readonly onAt: number;
  readonly offAt: number;
}

/** What is known beforehand of one channel's idle and running levels, in its unit. */
export interface LevelLimits {
  /** A log whose levels span less than this shows no running. */
  readonly smallestSpan: number;
  /** `onAt` is at least this far above idle. */
  readonly smallestStep: number;
  /** `onAt` is at least this share of the span above idle. */
  readonly stepShare: number;
  /** Idle is at most this, or `idleShare` of the top, whichever is more; a higher lowest level is load. */
  readonly highestIdle: number;
  readonly idleShare: number;
}

/**
 * Current out of the pack. Standby and servos draw up to about 2 A; a motor idling or taxiing draws one or
 * two per cent of full current (common practice, no published source).
 */
export const CURRENT_LEVELS: LevelLimits = {
  smallestSpan: 1.5,
  smallestStep: 0.3,
  stepShare: 0.005,
  highestIdle: 2,
  idleShare: 0.04,
};

/** Shaft speed. A stopped motor may read noise of some hundred rev/min (common practice, no published source). */
export const SHAFT_SPEED_LEVELS: LevelLimits = {
  smallestSpan: 500,
  smallestStep: 150,
  stepShare: 0.08,
  highestIdle: 0,
  idleShare: 0.1,
};

const OFF_SHARE_OF_STEP = 0.6;
/** A larger log is sampled: levels need no more values. */
const MOST_SAMPLES = 20_000;
/** Share of the low values that may be stray. */
const STRAY_SHARE = 0.01;
/** Idle holds the values up to this many standard deviations above its lowest. */
const IDLE_REACH_STEPS = 4;
/** Idle noise that the threshold must clear, in standard deviations. */
const NOISE_STEPS = 5;

/**
 * Threshold between the idle and the running level of one channel of one log, or null when its values never
 * rise far enough above idle. The values it is held against are means over `averagedS`. Without a low level that lasts a second the log holds no idle: idle is then 0.
 */
export function runningThreshold(
  timeS: Float64Array,
  values: Float64Array,
  stepS: number,
  limits: LevelLimits,
  averagedS: number,
): RunningThreshold | null {
  const top = highestSecondMean(timeS, values, stepS);
  if (!(top >= limits.smallestSpan)) return null;
  const { level: idle, spread } = idleLevel(values, stepS, top, limits);
  const span = top - idle;
  if (span < limits.smallestSpan) return null;
  const noise = spread / Math.sqrt(Math.max(1, averagedS / stepS));
  const step = Math.max(limits.smallestStep, limits.stepShare * span, NOISE_STEPS * noise);
  return { idle, top, onAt: idle + step, offAt: idle + OFF_SHARE_OF_STEP * step };
}

/** The highest mean over one second (at least two rows where the log is that fast); NaN without values. */
export function highestSecondMean(timeS: Float64Array, values: Float64Array, stepS: number): number {
  const windowS = 1 + 1e-6;
  const fewest = stepS <= 1 ? 2 : 1;
  let highest = Number.NaN;
  let sum = 0;
  let count = 0;
  for (let row = 0, tail = 0; row < values.length; row++) {
    const value = values[row]!;
    if (Number.isNaN(value)) continue;
    sum += value;
    count++;
    for (; timeS[tail]! < timeS[row]! - windowS; tail++) {
      if (Number.isNaN(values[tail]!)) continue;
      sum -= values[tail]!;
      count--;
    }
    if (count >= fewest && !(sum / count <= highest)) highest = sum / count;
  }
  return highest;
}

interface IdleLevel {
  readonly level: number;
  /** Standard deviation of one value. */
  readonly spread: number;
}

/** Lowest level at which the log rests; 0 when its lowest values are load already. */
function idleLevel(values: Float64Array, stepS: number, top: number, limits: LevelLimits): IdleLevel {
  const highest = Math.max(limits.highestIdle, limits.idleShare * top);
  const stride = Math.max(1, Math.floor(values.length / MOST_SAMPLES));
  const low: number[] = [];
  const changes: number[] = [];
  for (let row = 1; row < values.length; row += stride) {
    if (!(values[row]! <= highest)) continue;
    low.push(values[row]!);
    if (values[row - 1]! <= highest) changes.push(Math.abs(values[row]! - values[row - 1]!));
  }
  if (low.length * stride * stepS < 1 || changes.length < 2) return { level: 0, spread: 0 };
  const spread = (SCALE_OF_MAD * median(changes)) / Math.SQRT2;
  const lowest = quantile(low, STRAY_SHARE);
  const reach = Math.max(IDLE_REACH_STEPS * spread, limits.smallestStep / 2);
  return { level: median(low.filter((value) => value <= lowest + reach)), spread };
}
