import { rememberedBy } from "../../base/remembered/index.ts";
import { convolveWithDecay, decayAt } from "../../physics/index.ts";
import { addRow, type GramMatrix, solveGram } from "./gramMatrix.ts";
import type { Decays } from "./sharedDecays.ts";

/** The heating model solved for one time constant and one lag of the probe. */
export interface HeatSolution {
  readonly timeConstantS: number;
  readonly lagS: number;
  readonly sumOfSquares: number;
  readonly ambientC: number;
  readonly startC: number;
  /** Kelvin per second per driver unit. */
  readonly gain: number;
}

export interface HeatReadings {
  readonly stepS: number;
  readonly temperatureC: Float64Array;
  readonly driver: Float64Array;
}

export interface HeatProblem extends HeatReadings {
  /** What is known of the air: counts as one more reading with this weight; weight 0 without. */
  readonly ambientC: number;
  readonly ambientWeight: number;
}

/** Lags of the probe that are tried, seconds. */
export const LAGS_S = [0, 1, 2, 3, 4, 5, 6, 8] as const;
const SHORTEST_S = 10;
const LONGEST_S = 1500;
const STEPS_OF_TIME_CONSTANT = 36;

/** Time constants tried, seconds: evenly spaced in the logarithm. */
export const TIME_CONSTANTS_S: readonly number[] = Array.from(
  { length: STEPS_OF_TIME_CONSTANT },
  (_, k) => SHORTEST_S * (LONGEST_S / SHORTEST_S) ** (k / (STEPS_OF_TIME_CONSTANT - 1)),
);

/** Solves the model for a time constant and a lag; null where the readings do not fix it. */
export type HeatSolver = (timeConstantS: number, lagS: number) => HeatSolution | null;

/**
 * Solver of T = Ta (1 - e) + T0 e + gain conv(D, tau), seen through a first-order lag of the probe. The lagged
 * terms need no further convolution: by partial fractions they are differences of unlagged ones,
 * (tau x(tau) - lag x(lag)) / (tau - lag). What is known of the air is added last, so solvers with and without
 * it share `sums`.
 */
export function heatSolver(problem: HeatProblem, sums: HeatSums = heatSums(problem)): HeatSolver {
  return (timeConstantS, lagS) => {
    if (Math.abs(timeConstantS - lagS) < 1e-6) return null;
    const gram = withAir(sums(timeConstantS, lagS), problem);
    const solved = solveGram(gram);
    if (solved === null) return null;
    const [ambientC, startC, gain] = solved.coefficients;
    const { sumOfSquares } = solved;
    return { timeConstantS, lagS, sumOfSquares, ambientC: ambientC!, startC: startC!, gain: gain! };
  };
}

/** The air alone, as a reading: Ta once, neither T0 nor gain. */
function withAir(gram: GramMatrix, { ambientC, ambientWeight }: HeatProblem): GramMatrix {
  if (!(ambientWeight > 0)) return gram;
  const joined = { size: gram.size, sums: gram.sums.slice() };
  addRow(joined, Float64Array.of(1, 0, 0, ambientC), 0, ambientWeight);
  return joined;
}

export type HeatSums = (timeConstantS: number, lagS: number) => GramMatrix;

/** The sums of products that a solver needs, each worked out once. */
export function heatSums({ temperatureC, driver, stepS }: HeatReadings, decays: Decays = decayAt): HeatSums {
  const terms = rememberedBy((constantS) => ({
    decay: decays(driver.length, stepS, constantS),
    response: convolveWithDecay(driver, stepS, constantS),
  }));
  const ofLag = rememberedBy((lagS) =>
    rememberedBy((timeConstantS) => {
      const slow = terms(timeConstantS);
      return heatGram(temperatureC, slow, lagS > 0 ? terms(lagS) : slow, timeConstantS, lagS);
    }),
  );
  return (timeConstantS, lagS) => ofLag(lagS)(timeConstantS);
}

interface Terms {
  readonly decay: Float64Array;
  readonly response: Float64Array;
}

/**
 * Sums of products of (1 - e, e, response, reading), written out: this loop is where the time goes. Declared one by one:
 * unpacked from a list they would be boxed in every round.
 */
function heatGram(
  readingsC: Float64Array,
  slow: Terms,
  quick: Terms,
  timeConstantS: number,
  lagS: number,
): GramMatrix {
  const slowShare = timeConstantS / (timeConstantS - lagS);
  const quickShare = lagS / (timeConstantS - lagS);
  let aa = 0;
  let ae = 0;
  let ar = 0;
  let at = 0;
  let ee = 0;
  let er = 0;
  let et = 0;
  let rr = 0;
  let rt = 0;
  let tt = 0;
  for (let k = 0; k < readingsC.length; k++) {
    const t = readingsC[k]!;
    if (Number.isNaN(t)) continue;
    const e = slowShare * slow.decay[k]! - quickShare * quick.decay[k]!;
    const r = lagS > 0 ? slowShare * (slow.response[k]! - quick.response[k]!) : slow.response[k]!;
    const a = 1 - e;
    aa += a * a;
    ae += a * e;
    ar += a * r;
    at += a * t;
    ee += e * e;
    er += e * r;
    et += e * t;
    rr += r * r;
    rt += r * t;
    tt += t * t;
  }
  return { size: 3, sums: Float64Array.of(aa, ae, ar, at, 0, ee, er, et, 0, 0, rr, rt, 0, 0, 0, tt) };
}

/** The model's temperature of the controller itself (lag 0) or as its probe shows it, one per sample. */
export function modelledC(
  problem: HeatProblem,
  { timeConstantS, ambientC, startC, gain }: HeatSolution,
  lagS: number,
): Float64Array {
  const count = problem.driver.length;
  const decay = decayAt(count, problem.stepS, timeConstantS);
  const response = convolveWithDecay(problem.driver, problem.stepS, timeConstantS);
  const quickDecay = lagS > 0 ? decayAt(count, problem.stepS, lagS) : decay;
  const quick = lagS > 0 ? convolveWithDecay(problem.driver, problem.stepS, lagS) : response;
  const slowShare = timeConstantS / (timeConstantS - lagS);
  const quickShare = lagS / (timeConstantS - lagS);
  return response.map((value, k) => {
    const left = slowShare * decay[k]! - quickShare * quickDecay[k]!;
    const heated = lagS > 0 ? slowShare * (value - quick[k]!) : value;
    return ambientC + (startC - ambientC) * left + gain * heated;
  });
}
