import { leastSquares, projectionFit, rootOf } from "../base/statistics/index.ts";
import { convolveWithDecay, decayAt, type HeatingConstants, throughLag } from "./heating.ts";

/** Temperatures and their driver, evenly sampled from the same moment. */
export interface HeatingSamples {
  readonly stepS: number;
  /** degC; NaN where no reading is. */
  readonly temperatureC: Float64Array;
  /** Finite throughout, zero or more; holes filled by the caller. */
  readonly driver: Float64Array;
  /** The day's air temperature and one standard deviation of it, degC. */
  readonly ambientC: number;
  readonly ambientSd: number;
}

export interface HeatingFit extends HeatingConstants {
  /** Of the probe, s. */
  readonly lagS: number;
  /** 95 % interval of the time constant, s. */
  readonly timeConstantRangeS: readonly [number, number];
  /** 95 % interval of the steady rise; the sensor gain of the driver is not in it. */
  readonly steadyRiseRange: readonly [number, number];
  readonly residualSd: number;
  /** Degrees gained from the coolest to the warmest reading. */
  readonly riseC: number;
  /** Length of the samples over the time constant. */
  readonly logInTimeConstants: number;
  /** Rise and length suffice and the time constant is bounded from both sides: else the numbers are not to be used. */
  readonly isIdentified: boolean;
}

/** Least rise, degC, and least length of the log in time constants that fix the model. */
export const LEAST_RISE_C = 8;
export const LEAST_TIME_CONSTANTS = 0.7;

/** Probe lags tried, s, and the range of time constants, s. */
const LAGS_S = [0, 1, 2, 3, 4, 5, 6, 7, 8];
const TRIALS = { low: 5, high: 3000, steps: 26, tolerance: 1e-5 };
/** Lags that suffice for a first look at the scatter. */
const FIRST_LAGS_S = [0, 4];
/** Neighbouring residuals go together: so many seconds of log count as one independent reading. */
const SECONDS_PER_READING_TIME_CONSTANT = 30;
const SECONDS_PER_READING_RISE = 15;
/** A sum of squares larger by this many variances of one reading: a two-sided 95 % interval (1.96^2, rounded). */
const CHI_SQUARE_95 = 4;
/** Scatter of a reading, degC: first guess, and the least believed. */
const FIRST_READING_SD = 0.5;
const LEAST_READING_SD = 0.1;
const LEAST_SAMPLES = 30;
/** Places along a range of time constants where the rise is looked at. */
const STATIONS = [0, 0.25, 0.5, 0.75, 1];

/**
 * Fits T = Ta (1 - e) + T0 e + gain conv(D, tau), seen through the probe's lag, by variable projection over the time
 * constant for each lag; the ambient enters as one more reading. Interval: all (tau, lag) whose sum of squares stays
 * within a limit of the least, with correlated residuals allowed for.
 * Null when too few readings, a driver that does nothing, or a singular system leave it unsolved.
 * @throws RangeError for lists of unequal length and a driver that is not finite
 */
export function fitHeating(samples: HeatingSamples): HeatingFit | null {
  const problem = setUp(samples);
  if (problem === null) return null;
  const first = bestOverLags(problem, FIRST_LAGS_S, FIRST_READING_SD);
  if (first === null) return null;
  const best = bestOverLags(problem, LAGS_S, Math.max(LEAST_READING_SD, first.residualSd));
  return best === null ? null : describe(samples, problem, best);
}

interface Problem {
  readonly readings: Float64Array;
  readonly kept: Int32Array;
  readonly samples: HeatingSamples;
}

interface Profile {
  readonly lagS: number;
  readonly timeConstantS: number;
  readonly leastSum: number;
  readonly sumAt: (timeConstantS: number) => number;
}

interface Best {
  readonly profiles: readonly Profile[];
  readonly winner: Profile;
  readonly weights: Float64Array;
  readonly residualSd: number;
}

function setUp(samples: HeatingSamples): Problem | null {
  const { temperatureC, driver } = samples;
  if (temperatureC.length !== driver.length) {
    throw new RangeError(
      `heating needs lists of the same length: got ${temperatureC.length} and ${driver.length}`,
    );
  }
  const kept = Int32Array.from(temperatureC.keys()).filter((k) => Number.isFinite(temperatureC[k]));
  if (kept.length < LEAST_SAMPLES || !driver.some((value) => value > 0)) return null;
  const readings = Float64Array.of(...Array.from(kept, (k) => temperatureC[k]!), samples.ambientC);
  return { readings, kept, samples };
}

/** Regressors of Ta, T0 and gain at the kept samples, and the ambient as the last row. */
function columnsAt(problem: Problem, timeConstantS: number, lagS: number): Float64Array[] {
  const { driver, stepS } = problem.samples;
  const decay = throughLag(decayAt(driver.length, stepS, timeConstantS), stepS, lagS);
  const response = throughLag(convolveWithDecay(driver, stepS, timeConstantS), stepS, lagS);
  const rows = problem.kept.length;
  const columns = [0, 1, 2].map(() => new Float64Array(rows + 1));
  const [ofAmbient, ofStart, ofGain] = columns as [Float64Array, Float64Array, Float64Array];
  for (let row = 0; row < rows; row++) {
    const k = problem.kept[row]!;
    ofAmbient[row] = 1 - decay[k]!;
    ofStart[row] = decay[k]!;
    ofGain[row] = response[k]!;
  }
  ofAmbient[rows] = 1;
  return columns;
}

function bestOverLags(problem: Problem, lagsS: readonly number[], readingSd: number): Best | null {
  const weights = new Float64Array(problem.readings.length).fill(1);
  const readingsPerIndependent = Math.max(1, SECONDS_PER_READING_RISE / problem.samples.stepS);
  weights[weights.length - 1] = readingsPerIndependent * (readingSd / problem.samples.ambientSd) ** 2;
  const profiles = lagsS.map((lagS) => profileAt(problem, lagS, weights)).filter((one) => one !== null);
  if (profiles.length === 0) return null;
  const winner = profiles.reduce((best, one) => (one.leastSum < best.leastSum ? one : best));
  const freedom = Math.max(1, problem.kept.length - 5);
  return { profiles, winner, weights, residualSd: Math.sqrt(winner.leastSum / freedom) };
}

function profileAt(problem: Problem, lagS: number, weights: Float64Array): Profile | null {
  const columns = (timeConstantS: number) => columnsAt(problem, timeConstantS, lagS);
  const fit = projectionFit(columns, problem.readings, TRIALS, weights);
  if (fit === null) return null;
  const sumAt = (timeConstantS: number) =>
    leastSquares(columns(timeConstantS), problem.readings, weights)?.residualSumOfSquares ??
    Number.POSITIVE_INFINITY;
  return { lagS, timeConstantS: fit.parameter, leastSum: fit.linear.residualSumOfSquares, sumAt };
}

function describe(samples: HeatingSamples, problem: Problem, best: Best): HeatingFit | null {
  const { timeConstantS, lagS } = best.winner;
  const solved = solveAt(problem, best, timeConstantS, lagS);
  if (solved === null) return null;
  const seconds = problem.kept.length * samples.stepS;
  const ofTime = rangesWithin(best, limitOf(best, seconds / SECONDS_PER_READING_TIME_CONSTANT));
  const ofRise = rangesWithin(best, limitOf(best, seconds / SECONDS_PER_READING_RISE));
  const ends = ofTime.flatMap((one) => [one.low, one.high]);
  const range: [number, number] = [Math.min(...ends), Math.max(...ends)];
  const readings = problem.readings.subarray(0, -1);
  const riseC = readings.reduce((a, b) => Math.max(a, b)) - readings.reduce((a, b) => Math.min(a, b));
  const logInTimeConstants = (samples.temperatureC.length * samples.stepS) / timeConstantS;
  const isBounded = range[0] > TRIALS.low && range[1] < TRIALS.high;
  return {
    ...solved,
    lagS,
    timeConstantRangeS: range,
    steadyRiseRange: riseRange(problem, best, ofRise),
    residualSd: best.residualSd,
    riseC,
    logInTimeConstants,
    isIdentified:
      riseC >= LEAST_RISE_C &&
      logInTimeConstants >= LEAST_TIME_CONSTANTS &&
      isBounded &&
      solved.steadyRise > 0,
  };
}

function solveAt(problem: Problem, best: Best, timeConstantS: number, lagS: number): HeatingConstants | null {
  const fit = leastSquares(columnsAt(problem, timeConstantS, lagS), problem.readings, best.weights);
  if (fit === null) return null;
  const [ambientC, startC, gain] = fit.coefficients as [number, number, number];
  return { timeConstantS, steadyRise: gain * timeConstantS, ambientC, startC };
}

function limitOf(best: Best, independentReadings: number): number {
  return best.winner.leastSum * (1 + CHI_SQUARE_95 / Math.max(1, independentReadings));
}

interface LagRange {
  readonly lagS: number;
  readonly low: number;
  readonly high: number;
}

/** For each lag that comes within the limit at all, the time constants that do. */
function rangesWithin(best: Best, limit: number): LagRange[] {
  return best.profiles
    .filter((profile) => profile.leastSum <= limit)
    .map((profile) => ({
      lagS: profile.lagS,
      low: crossing(profile, limit, TRIALS.low),
      high: crossing(profile, limit, TRIALS.high),
    }));
}

function crossing(profile: Profile, limit: number, end: number): number {
  const at = Math.log(profile.timeConstantS);
  const excess = (log: number) => profile.sumAt(Math.exp(log)) - limit;
  if (!(excess(Math.log(end)) > 0)) return end;
  const root = rootOf(excess, at, Math.log(end), 1e-3);
  return root === null ? profile.timeConstantS : Math.exp(root);
}

/** Least and greatest steady rise along the ranges. */
function riseRange(problem: Problem, best: Best, ranges: readonly LagRange[]): readonly [number, number] {
  const rises = ranges.flatMap(({ lagS, low, high }) =>
    STATIONS.map((share) => solveAt(problem, best, low * (high / low) ** share, lagS)?.steadyRise),
  );
  const known = rises.filter((rise) => rise !== undefined);
  return [Math.min(...known), Math.max(...known)];
}
