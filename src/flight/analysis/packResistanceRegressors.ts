import type { LoadFilters } from "./packResistanceFilter.ts";

/**
 * Time constants of the filters of the current that stand for the slower parts of the pack, seconds. None is
 * shorter: a quicker part could not be told from a late or a slow current sensor.
 */
export const FILTERS_S: readonly number[] = [1, 2.5, 6, 20];
/** Degree of the open-circuit curve in the charge drawn. */
const DEGREE = 5;
/** Columns: Legendre polynomials 0 to 5 of the charge, then the loads: -I, and -I through each filter. */
export const FIRST_LOAD = DEGREE + 1;

export const REGRESSORS = FIRST_LOAD + 1 + FILTERS_S.length;
/** A row: the regressors, then the volts. */
export const ROW_WIDTH = REGRESSORS + 1;

/** Volts lost per ampere, `seconds` after a step of the current. */
export function resistanceOhm(coefficients: Float64Array, seconds: number): number {
  return FILTERS_S.reduce(
    (sum, constantS, k) => sum + coefficients[FIRST_LOAD + 1 + k]! * (1 - Math.exp(-seconds / constantS)),
    coefficients[FIRST_LOAD]!,
  );
}

/** Volts at no load at the share of the charge drawn, 0 to 1. */
export function openCircuitVolts(coefficients: Float64Array, share: number): number {
  const row = new Float64Array(FIRST_LOAD);
  writePolynomials(row, 0, share);
  return row.reduce((sum, value, k) => sum + value * coefficients[k]!, 0);
}

/** Legendre polynomials of 2 share - 1 by their recurrence: nearly orthogonal, so the fit keeps its digits. */
export function writePolynomials(row: Float64Array, at: number, share: number): void {
  const u = 2 * share - 1;
  row[at] = 1;
  row[at + 1] = u;
  for (let k = 1; k < DEGREE; k++) {
    row[at + k + 1] = ((2 * k + 1) * u * row[at + k]! - k * row[at + k - 1]!) / (k + 1);
  }
}

/** Charge drawn so far as a share of all charge drawn (0 to 1), by trapezoids, and that charge in coulombs. */
export function chargeShares(timeS: Float64Array, currentA: Float64Array) {
  const share = new Float64Array(currentA.length);
  let sum = 0;
  for (let i = 1; i < share.length; i++) {
    sum += 0.5 * (currentA[i]! + currentA[i - 1]!) * (timeS[i]! - timeS[i - 1]!);
    share[i] = sum;
  }
  if (sum > 0) for (let i = 0; i < share.length; i++) share[i]! /= sum;
  return { share, total: sum };
}

/** The current and its filtered copies. */
export function loadColumns(filters: LoadFilters, currentA: Float64Array): Float64Array[] {
  return [currentA, ...FILTERS_S.map((constantS) => filters(constantS)(currentA))];
}

/** Row-major regressors, the volts last. */
export function regressorRows(
  packV: Float64Array,
  loads: readonly Float64Array[],
  share: Float64Array,
): Float64Array {
  const rows = new Float64Array(ROW_WIDTH * share.length);
  for (let i = 0; i < share.length; i++) {
    const at = i * ROW_WIDTH;
    writePolynomials(rows, at, share[i]!);
    for (let k = 0; k < loads.length; k++) rows[at + FIRST_LOAD + k] = -loads[k]![i]!;
    rows[at + REGRESSORS] = packV[i]!;
  }
  return rows;
}
