import { rememberedBy } from "../../base/remembered/index.ts";
import { addProducts, emptyGram, type GramColumns, solveGramBounded } from "./gramMatrix.ts";
import type { LoadFilters } from "./packResistanceFilter.ts";
import {
  chargeShares,
  FILTERS_S,
  FIRST_LOAD,
  loadColumns,
  polynomialColumns,
  REGRESSORS,
  resistanceOhm,
} from "./packResistanceRegressors.ts";
import type { LoadSamples } from "./packResistanceSamples.ts";

/** How the current sensor answers: late by `shiftS` (negative: early), through a first-order filter of `filterS`. */
export interface SensorTiming {
  readonly shiftS: number;
  readonly filterS: number;
  /** The best shift if there were no filter. */
  readonly plainShiftS: number;
  /**
   * Mean and standard deviation of the resistance after one second over all filters tried, each with the weight
   * that the data and the common use give it, relative to the best one: how far the timing leaves it open.
   */
  readonly meanOverBest: number;
  readonly spreadOverBest: number;
  /** The same without any filter. */
  readonly plainOverBest: number;
}

const SEARCHED_S = 0.6;
const GRID_S = 0.05;
/** Filters tried for the current sensor, seconds, and how usual each is (common practice, no published source). */
const SENSOR_FILTERS = [
  [0, 0.4],
  [0.1, 0.15],
  [0.2, 0.15],
  [0.3, 0.15],
  [0.4, 0.1],
  [0.5, 0.05],
] as const;
/** Smoothing of both sides plus the filter tried, seconds: the same noise is left whichever filter is tried. */
const SMOOTHING_S = 0.9;
/** More rows than this say nothing new about the timing. */
const MOST_ROWS = 800;

/**
 * The shift and filter of the current sensor at which the smoothed volts follow the smoothed load best (least
 * squares of the pack model). The shift on a grid, refined by a parabola. The volts are sent through the filter
 * that is tried: that undoes nothing and amplifies no noise.
 */
export function sensorTiming(samples: LoadSamples, filters: LoadFilters): SensorTiming | null {
  const stride = Math.ceil(samples.timeS.length / MOST_ROWS);
  const places = rememberedBy((shiftS) => placesAt(samples, stride, shiftS));
  const buffers = buffersFor(samples.timeS.length);
  const tried: Candidate[] = [];
  for (const [filterS, prior] of SENSOR_FILTERS) {
    const found = bestShift(
      packModel(samples, filters, filterS, { stride, places, buffers }),
      tried.at(-1)?.shiftS ?? null,
    );
    if (found !== null) tried.push({ ...found, filterS, prior });
  }
  const least = Math.min(...tried.map((one) => one.misfit));
  const weightOf = (one: Candidate) =>
    one.prior * Math.exp(-0.5 * independentResiduals(samples) * (one.misfit / least - 1));
  const best = tried.reduce((a, b) => (weightOf(b) > weightOf(a) ? b : a), tried[0]!);
  if (best === undefined) return null;
  const total = tried.reduce((sum, one) => sum + weightOf(one), 0);
  const moment = (power: number, centre: number) =>
    tried.reduce((sum, one) => sum + (weightOf(one) / total) * (one.ohm / best.ohm - centre) ** power, 0);
  const meanOverBest = moment(1, 0);
  return {
    shiftS: best.shiftS,
    filterS: best.filterS,
    plainShiftS: tried[0]!.shiftS,
    meanOverBest,
    plainOverBest: tried[0]!.ohm / best.ohm,
    spreadOverBest: Math.sqrt(moment(2, meanOverBest)),
  };
}

interface Candidate extends Solved {
  readonly shiftS: number;
  readonly filterS: number;
  readonly prior: number;
}

/**
 * Neighbouring residuals are alike over about this long, seconds (seen over simulated flights: shorter memories trust a
 * quick part of the pack that passes for a filter).
 */
const RESIDUAL_MEMORY_S = 15;

function independentResiduals({ timeS }: LoadSamples): number {
  return (timeS[timeS.length - 1]! - timeS[0]!) / RESIDUAL_MEMORY_S;
}

/** Searches the whole grid, or downhill from `start` when one is given. */
function bestShift(modelAt: (shiftS: number) => Solved | null, start: number | null) {
  const steps = Math.round(SEARCHED_S / GRID_S);
  const seen = new Map<number, Solved>();
  const solved = (k: number): Solved => {
    const value = seen.get(k) ?? (Math.abs(k) > steps ? null : modelAt(k * GRID_S)) ?? UNSOLVED;
    seen.set(k, value);
    return value;
  };
  const misfit = (k: number) => solved(k).misfit;
  let best = start === null ? 0 : Math.round(start / GRID_S);
  if (start === null) for (let k = -steps; k <= steps; k += 2) if (misfit(k) < misfit(best)) best = k;
  while (misfit(best - 1) < misfit(best)) best--;
  while (misfit(best + 1) < misfit(best)) best++;
  if (!Number.isFinite(misfit(best))) return null;
  const before = misfit(best - 1);
  const after = misfit(best + 1);
  const curvature = before - 2 * misfit(best) + after;
  const offset = curvature > 0 && Number.isFinite(curvature) ? (0.5 * (before - after)) / curvature : 0;
  return { ...solved(best), shiftS: (best + offset) * GRID_S };
}

interface Solved {
  /** Squared residuals, V2. */
  readonly misfit: number;
  /** After one second. */
  readonly ohm: number;
}

const UNSOLVED: Solved = { misfit: Number.POSITIVE_INFINITY, ohm: Number.NaN };

/** What the models of all filters share: one is done with before the next is made, so each may use the same arrays. */
interface Shared {
  readonly stride: number;
  readonly places: (shiftS: number) => Places;
  readonly buffers: ReturnType<typeof buffersFor>;
}

function buffersFor(samples: number) {
  const buffer = () => new Float64Array(samples);
  return { currentA: buffer(), filteredV: buffer(), packV: buffer(), loads: FILTERS_S.map(buffer) };
}

/** The smoothed pack model, solved for a shift of the current. */
function packModel(
  samples: LoadSamples,
  filters: LoadFilters,
  filterS: number,
  { stride, places, buffers }: Shared,
): (shiftS: number) => Solved | null {
  const smooth = filters(SMOOTHING_S - filterS);
  const currentA = smooth(samples.currentA, buffers.currentA);
  const filteredV = filterS > 0 ? filters(filterS)(samples.packV, buffers.filteredV) : samples.packV;
  const packV = smooth(filteredV, buffers.packV);
  const { share } = chargeShares(samples.timeS, currentA);
  const loads = loadColumns(filters, currentA, buffers.loads);
  const columns = [
    ...polynomialColumns(everyNth(share, stride)),
    ...loads.map(() => new Float64Array(Math.ceil(share.length / stride))),
    everyNth(packV, stride),
  ];
  const still = unshiftedSums(columns);
  return (shiftS) => {
    const gram = { size: REGRESSORS, sums: still.slice() };
    const at = places(shiftS);
    loads.forEach((load, k) => {
      writeNegative(columns[FIRST_LOAD + k]!, load, at);
    });
    for (let i = 0; i < REGRESSORS; i++) {
      const end = i < FIRST_LOAD ? REGRESSORS : REGRESSORS + 1;
      addProducts(gram, i, columns[i]!, columns, Math.max(i, FIRST_LOAD), end);
    }
    const solved = solveGramBounded(gram, FIRST_LOAD);
    return solved && { misfit: solved.sumOfSquares, ohm: resistanceOhm(solved.coefficients, 1) };
  };
}

function everyNth(values: Float64Array, stride: number): Float64Array {
  const kept = new Float64Array(Math.ceil(values.length / stride));
  for (let k = 0; k < kept.length; k++) kept[k] = values[k * stride]!;
  return kept;
}

/** What no shift changes: the sums of products of the polynomials of the charge and the volts. */
function unshiftedSums(columns: GramColumns): Float64Array {
  const gram = emptyGram(REGRESSORS);
  for (let i = 0; i < FIRST_LOAD; i++) {
    addProducts(gram, i, columns[i]!, columns, i, FIRST_LOAD);
    addProducts(gram, i, columns[i]!, columns, REGRESSORS, REGRESSORS + 1);
  }
  addProducts(gram, REGRESSORS, columns[REGRESSORS]!, columns, REGRESSORS, REGRESSORS + 1);
  return gram.sums;
}

/** Between which samples the shifted times of every `stride`-th sample lie. */
interface Places {
  readonly below: Int32Array;
  /** Way from there to the next sample, 0 to 1; 0 beyond the ends and in holes. */
  readonly fraction: Float64Array;
}

function placesAt({ timeS, holeS }: LoadSamples, stride: number, shiftS: number): Places {
  const last = timeS.length - 1;
  const count = Math.ceil(timeS.length / stride);
  const places = { below: new Int32Array(count), fraction: new Float64Array(count) };
  let below = 0;
  for (let k = 0; k < count; k++) {
    const atS = timeS[k * stride]! + shiftS;
    while (below < last && timeS[below + 1]! <= atS) below++;
    const width = below < last ? timeS[below + 1]! - timeS[below]! : 0;
    places.below[k] = below;
    if (width > 0 && width <= holeS) places.fraction[k] = Math.max(0, (atS - timeS[below]!) / width);
  }
  return places;
}

/** The load at those places, times -1. */
function writeNegative(column: Float64Array, load: Float64Array, { below, fraction }: Places): void {
  for (let k = 0; k < column.length; k++) {
    const low = load[below[k]!]!;
    const share = fraction[k]!;
    column[k] = -(share > 0 ? low + share * (load[below[k]! + 1]! - low) : low);
  }
}
