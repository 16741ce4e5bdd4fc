import { medianInPlace, SCALE_OF_MAD, withScratch } from "../../base/statistics/index.ts";
import { combineGrams, type GramColumns, gramOf, solveGramBounded } from "./gramMatrix.ts";
import type { LoadFilters } from "./packResistanceFilter.ts";
import {
  chargeShares,
  FIRST_LOAD,
  loadColumns,
  openCircuitVolts,
  REGRESSORS,
  regressorColumns,
  resistanceOhm,
} from "./packResistanceRegressors.ts";
import type { LoadSamples } from "./packResistanceSamples.ts";

const HUBER_LIMIT = 1.5;
const MOST_REWEIGHTINGS = 8;
/** Relative change of every coefficient below which reweighting ends. */
const SETTLED = 1e-4;
const BLOCKS = 12;
export interface PackFit {
  /** Volts at no load, for the share of the charge drawn in this range, 0 to 1. */
  readonly openCircuitV: (chargeShare: number) => number;
  readonly chargeShare: Float64Array;
  /** Charge drawn in this range, coulombs. */
  readonly chargeC: number;
  readonly resistanceOhm: (seconds: number) => number;
  /** One standard deviation, by leaving out each of 12 stretches in turn. */
  readonly standardErrorOhm: (seconds: number) => number;
  readonly residualV: number;
}

/**
 * Robust regression of the volts on the open-circuit curve (a polynomial of the charge drawn) and on the current
 * and four first-order filters of it, each part of the resistance 0 or more. Huber weights (Huber 1981, limit 1.5) bound the pull of badly timed rows;
 * the standard error comes from blocks, because neighbouring residuals are alike.
 */
export function fitPack(samples: LoadSamples, currentA: Float64Array, filters: LoadFilters): PackFit | null {
  const charge = chargeShares(samples.timeS, currentA);
  const columns = regressorColumns(samples.packV, loadColumns(filters, currentA), charge.share);
  const count = samples.timeS.length;
  const weights = new Float64Array(count).fill(1);
  const sizes = new Float64Array(count);
  let coefficients: Float64Array | null = null;
  let scale = 0;
  for (let pass = 0; pass < MOST_REWEIGHTINGS; pass++) {
    const solved = solveGramBounded(gramOf(columns, weights, 0, count), FIRST_LOAD);
    if (solved === null) return null;
    const moved = coefficients === null || movedBy(coefficients, solved.coefficients) > SETTLED;
    coefficients = solved.coefficients;
    if (!moved) break;
    scale = reweight(columns, coefficients, weights, sizes);
  }
  if (coefficients === null) return null;
  const best = coefficients;
  const parts = blockFits(columns, weights, count);
  return {
    openCircuitV: (share) => openCircuitVolts(best, share),
    chargeShare: charge.share,
    chargeC: charge.total,
    resistanceOhm: (seconds) => resistanceOhm(best, seconds),
    standardErrorOhm: (seconds) => jackknifeError(parts.map((part) => resistanceOhm(part, seconds))),
    residualV: scale,
  };
}

/** Sets the Huber weights of all rows and the sizes of their residuals; returns the scale of those, volts. */
function reweight(columns: GramColumns, b: Float64Array, weights: Float64Array, sizes: Float64Array): number {
  sizes.set(columns[REGRESSORS]!);
  for (let j = 0; j < REGRESSORS; j++) {
    const column = columns[j]!;
    const factor = b[j]!;
    for (let i = 0; i < sizes.length; i++) sizes[i]! -= factor * column[i]!;
  }
  for (let i = 0; i < sizes.length; i++) sizes[i] = Math.abs(sizes[i]!);
  const scale = Math.max(1e-9, SCALE_OF_MAD * medianOf(sizes));
  const limit = HUBER_LIMIT * scale;
  for (let i = 0; i < sizes.length; i++) weights[i] = sizes[i]! <= limit ? 1 : limit / sizes[i]!;
  return scale;
}

function medianOf(values: Float64Array): number {
  return withScratch(values.length, (copy) => {
    copy.set(values);
    return medianInPlace(copy);
  });
}

function movedBy(before: Float64Array, after: Float64Array): number {
  let most = 0;
  for (let j = 0; j < after.length; j++) {
    most = Math.max(most, Math.abs(after[j]! - before[j]!) / (Math.abs(after[j]!) + 1e-3));
  }
  return most;
}

function blockFits(columns: GramColumns, weights: Float64Array, count: number): Float64Array[] {
  const edge = (block: number) => Math.round((block * count) / BLOCKS);
  const grams = Array.from({ length: BLOCKS }, (_, k) => gramOf(columns, weights, edge(k), edge(k + 1)));
  const whole = grams.reduce((sum, gram) => combineGrams(sum, gram, 1));
  return grams
    .map((gram) => solveGramBounded(combineGrams(whole, gram, -1), FIRST_LOAD)?.coefficients)
    .filter((part) => part !== undefined);
}

function jackknifeError(parts: readonly number[]): number {
  const mean = parts.reduce((sum, part) => sum + part, 0) / parts.length;
  const squares = parts.reduce((sum, part) => sum + (part - mean) ** 2, 0);
  return Math.sqrt((squares * (parts.length - 1)) / parts.length);
}
