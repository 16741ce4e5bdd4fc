import { rootOf } from "../../base/statistics/index.ts";
import {
  type HeatProblem,
  type HeatSolution,
  heatSolver,
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
  samples: { readonly stepS: number; readonly temperatureC: Float64Array; readonly driver: Float64Array },
  ambient: { readonly ambientC: number; readonly standardDeviationC: number } | null,
): HeatFit | null {
  const readings = samples.temperatureC.reduce((sum, value) => (Number.isNaN(value) ? sum : sum + 1), 0);
  if (readings < LEAST_READINGS || !samples.driver.some((value) => value > 0)) return null;
  const free: HeatProblem = { ...samples, ambientC: 0, ambientWeight: 0 };
  const solveFree = heatSolver(free);
  const first = bestOf(solveFree, gridOf(solveFree, FIRST_LAGS_S));
  if (first === null) return null;
  if (ambient === null) return describe(free, readings);
  const scatter = Math.max(LEAST_SCATTER_C ** 2, first.sumOfSquares / readings);
  const perReading = Math.max(1, MEMORY_OF_RISE_S / samples.stepS);
  const ambientWeight = (perReading * scatter) / ambient.standardDeviationC ** 2;
  return describe({ ...samples, ambientC: ambient.ambientC, ambientWeight }, readings);
}

/** Sums of squares on the grid of time constants, one row per lag. */
interface Grid {
  readonly lagS: number;
  readonly sums: readonly number[];
}

function gridOf(solve: Solver, lagsS: readonly number[]): readonly Grid[] {
  const sumAt = (timeConstantS: number, lagS: number) =>
    solve(timeConstantS, lagS)?.sumOfSquares ?? Number.POSITIVE_INFINITY;
  return lagsS.map((lagS) => ({ lagS, sums: TIME_CONSTANTS_S.map((constantS) => sumAt(constantS, lagS)) }));
}

function bestOf(solve: Solver, grids: readonly Grid[]): HeatSolution | null {
  const leasts = grids.map((grid) => Math.min(...grid.sums));
  const grid = grids[leasts.indexOf(Math.min(...leasts))]!;
  return solve(TIME_CONSTANTS_S[grid.sums.indexOf(Math.min(...grid.sums))]!, grid.lagS);
}

function describe(problem: HeatProblem, readings: number): HeatFit | null {
  const solve = heatSolver(problem);
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
function risesOver(solve: Solver, { lagS, low, high }: LagRange): number[] {
  return STATIONS.map((share) => solve(low * (high / low) ** share, lagS))
    .filter((solved) => solved !== null)
    .map((solved) => solved.gain * solved.timeConstantS);
}

type Solver = ReturnType<typeof heatSolver>;

/** Between the neighbours on the grid, by a parabola in the logarithm (twice). */
function refined(solve: Solver, coarse: HeatSolution): HeatSolution {
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
function rangesOf(solve: Solver, grids: readonly Grid[], best: HeatSolution, limit: number): LagRange[] {
  const ranges: LagRange[] = [];
  for (const { lagS, sums } of grids) {
    const inside =
      lagS === best.lagS ? best.timeConstantS : TIME_CONSTANTS_S[sums.indexOf(Math.min(...sums))]!;
    const excess = (log: number) =>
      (solve(Math.exp(log), lagS)?.sumOfSquares ?? Number.POSITIVE_INFINITY) - limit;
    if (!(excess(Math.log(inside)) <= 0)) continue;
    const isOut = (constantS: number, k: number) => sums[k]! > limit && constantS !== inside;
    const below = TIME_CONSTANTS_S.findLastIndex((constantS, k) => constantS < inside && isOut(constantS, k));
    const above = TIME_CONSTANTS_S.findIndex((constantS, k) => constantS > inside && isOut(constantS, k));
    const edge = (outside: number | undefined) => {
      if (outside === undefined) return null;
      const root = rootOf(excess, Math.log(outside), Math.log(inside), 1e-3);
      return root === null ? inside : Math.exp(root);
    };
    ranges.push({
      lagS,
      low: edge(TIME_CONSTANTS_S[below]) ?? TIME_CONSTANTS_S[0]!,
      high: edge(TIME_CONSTANTS_S[above]) ?? TIME_CONSTANTS_S.at(-1)!,
    });
  }
  return ranges;
}
