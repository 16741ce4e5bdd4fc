import { rootOf } from "../../base/statistics/index.ts";
import {
  type HeatProblem,
  type HeatReadings,
  type HeatSolution,
  type HeatSolver,
  type HeatSums,
  heatSolver,
  heatSums,
  LAGS_S,
  TIME_CONSTANTS_S,
} from "./controllerHeatProfile.ts";

export interface HeatFit {
  readonly problem: HeatProblem;
  readonly best: HeatSolution;
  /** Number of readings. */
  readonly readings: number;
  /** Values that fit nearly as well, low and high: time constant s, steady rise K per driver unit, lag s. */
  readonly timeConstantS: readonly [number, number];
  readonly steadyRise: readonly [number, number];
  readonly lagsS: readonly number[];
  /** False where a range runs into the end of what was tried. */
  readonly isBounded: boolean;
}

/** Neighbouring residuals are alike: so many seconds count as one reading for the time constant, and for the rise. */
const MEMORY_OF_TIME_CONSTANT_S = 30;
const MEMORY_OF_RISE_S = 15;
/** 1.96 squared, rounded up: the 95 % point of chi-squared with one degree of freedom. */
const CHI_SQUARED_95 = 4;
/** Lags that suffice for a first look at the scatter. */
const FIRST_LAGS_S = [0, 4];
const LEAST_READINGS = 30;
/** Least scatter of a reading that is believed, degC. */
const LEAST_SCATTER_C = 0.1;
/** Places along a range of time constants at which the rise is looked at. */
const STATIONS = [0, 0.2, 0.4, 0.6, 0.8, 1];

/** What one driver makes of the temperatures; null with too few readings or a driver that does nothing. */
export function fitHeat(
  samples: HeatReadings,
  ambient: { readonly ambientC: number; readonly standardDeviationC: number } | null,
): HeatFit | null {
  const readings = samples.temperatureC.reduce((sum, value) => (Number.isNaN(value) ? sum : sum + 1), 0);
  if (readings < LEAST_READINGS || !samples.driver.some((value) => value > 0)) return null;
  const free: HeatProblem = { ...samples, ambientC: 0, ambientWeight: 0 };
  const sums = heatSums(samples);
  const solveFree = heatSolver(free, sums);
  const first = bestOf(solveFree, gridOf(solveFree, FIRST_LAGS_S));
  if (first === null) return null;
  if (ambient === null) return describe(free, sums, readings);
  const scatter = Math.max(LEAST_SCATTER_C ** 2, first.sumOfSquares / readings);
  const perReading = Math.max(1, MEMORY_OF_RISE_S / samples.stepS);
  const ambientWeight = (perReading * scatter) / ambient.standardDeviationC ** 2;
  return describe({ ...samples, ambientC: ambient.ambientC, ambientWeight }, sums, readings);
}

/** Sums of squares on the grid of time constants for one lag, looked up where they are needed. */
interface Grid {
  readonly lagS: number;
  /** At a place on the grid; Infinity beyond its ends. */
  readonly sumAt: (place: number) => number;
  /** Place of the least sum. */
  readonly least: number;
}

/** Every so many places are looked at first, then all between the neighbours of the least. */
const FIRST_STRIDE = 4;

function gridOf(solve: HeatSolver, lagsS: readonly number[]): readonly Grid[] {
  return lagsS.map((lagS) => {
    const known: number[] = [];
    const sumAt = (place: number): number => {
      const constantS = TIME_CONSTANTS_S[place];
      if (constantS === undefined) return Number.POSITIVE_INFINITY;
      known[place] ??= solve(constantS, lagS)?.sumOfSquares ?? Number.POSITIVE_INFINITY;
      return known[place];
    };
    return { lagS, sumAt, least: leastPlace(sumAt) };
  });
}

function leastPlace(sumAt: (place: number) => number): number {
  const last = TIME_CONSTANTS_S.length - 1;
  let first = last;
  for (let place = 0; place < last; place += FIRST_STRIDE) if (sumAt(place) < sumAt(first)) first = place;
  let least = first;
  const from = Math.max(0, first - FIRST_STRIDE + 1);
  for (let place = from; place < first + FIRST_STRIDE; place++)
    if (sumAt(place) < sumAt(least)) least = place;
  return least;
}

function bestOf(solve: HeatSolver, grids: readonly Grid[]): HeatSolution | null {
  const best = grids.reduce((a, b) => (b.sumAt(b.least) < a.sumAt(a.least) ? b : a));
  return solve(TIME_CONSTANTS_S[best.least]!, best.lagS);
}

function describe(problem: HeatProblem, sums: HeatSums, readings: number): HeatFit | null {
  const solve = heatSolver(problem, sums);
  const grids = gridOf(solve, LAGS_S);
  const coarse = bestOf(solve, grids);
  if (coarse === null) return null;
  const best = refined(solve, coarse);
  const seconds = readings * problem.stepS;
  const limit = (memoryS: number) =>
    best.sumOfSquares * (1 + CHI_SQUARED_95 / Math.max(1, seconds / memoryS));
  const ofTime = rangesOf(solve, grids, best, limit(MEMORY_OF_TIME_CONSTANT_S));
  const ofRise = rangesOf(solve, grids, best, limit(MEMORY_OF_RISE_S));
  const low = Math.min(...ofTime.map((one) => one.low));
  const high = Math.max(...ofTime.map((one) => one.high));
  const rises = ofRise.flatMap((one) => risesOver(solve, one));
  return {
    problem,
    best,
    readings,
    timeConstantS: [low, high],
    steadyRise: [Math.min(...rises), Math.max(...rises)],
    lagsS: ofTime.map((one) => one.lagS),
    isBounded: low > TIME_CONSTANTS_S[0]! && high < TIME_CONSTANTS_S.at(-1)!,
  };
}

/** Steady rises along a range of time constants. */
function risesOver(solve: HeatSolver, { lagS, low, high }: LagRange): number[] {
  return STATIONS.map((share) => solve(low * (high / low) ** share, lagS))
    .filter((solved) => solved !== null)
    .map((solved) => solved.gain * solved.timeConstantS);
}

/** Between the neighbours on the grid, by a parabola in the logarithm (twice). */
function refined(solve: HeatSolver, coarse: HeatSolution): HeatSolution {
  let best = coarse;
  for (let step = Math.log(TIME_CONSTANTS_S[1]! / TIME_CONSTANTS_S[0]!); step > 1e-3; step /= 6) {
    const below = solve(best.timeConstantS * Math.exp(-step), best.lagS);
    const above = solve(best.timeConstantS * Math.exp(step), best.lagS);
    if (below === null || above === null) return best;
    const curvature = below.sumOfSquares - 2 * best.sumOfSquares + above.sumOfSquares;
    if (!(curvature > 0)) continue;
    const offset = (0.5 * step * (below.sumOfSquares - above.sumOfSquares)) / curvature;
    const next = solve(best.timeConstantS * Math.exp(Math.max(-step, Math.min(step, offset))), best.lagS);
    if (next && next.sumOfSquares <= best.sumOfSquares) best = next;
  }
  return best;
}

interface LagRange {
  readonly lagS: number;
  readonly low: number;
  readonly high: number;
}

/** For each lag that comes within the limit at all, the time constants that do. */
function rangesOf(solve: HeatSolver, grids: readonly Grid[], best: HeatSolution, limit: number): LagRange[] {
  const ranges: LagRange[] = [];
  for (const { lagS, sumAt, least } of grids) {
    const inside = lagS === best.lagS ? best.timeConstantS : TIME_CONSTANTS_S[least]!;
    const excess = (log: number) =>
      (solve(Math.exp(log), lagS)?.sumOfSquares ?? Number.POSITIVE_INFINITY) - limit;
    if (!(excess(Math.log(inside)) <= 0)) continue;
    const edge = (outside: number | undefined) => {
      if (outside === undefined) return null;
      const root = rootOf(excess, Math.log(outside), Math.log(inside), 1e-3);
      return root === null ? inside : Math.exp(root);
    };
    const firstAbove = TIME_CONSTANTS_S.findIndex((constantS) => constantS > inside);
    let above = firstAbove < 0 ? TIME_CONSTANTS_S.length : firstAbove;
    let below = TIME_CONSTANTS_S.findLastIndex((constantS) => constantS < inside);
    while (above < TIME_CONSTANTS_S.length && !(sumAt(above) > limit)) above++;
    while (below >= 0 && !(sumAt(below) > limit)) below--;
    ranges.push({
      lagS,
      low: edge(TIME_CONSTANTS_S[below]) ?? TIME_CONSTANTS_S[0]!,
      high: edge(TIME_CONSTANTS_S[above]) ?? TIME_CONSTANTS_S.at(-1)!,
    });
  }
  return ranges;
}
