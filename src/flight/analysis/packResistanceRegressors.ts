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

/** Volts lost per ampere, `seconds` after a step of the current. */
export function resistanceOhm(coefficients: Float64Array, seconds: number): number {
  return FILTERS_S.reduce(
    (sum, constantS, k) => sum + coefficients[FIRST_LOAD + 1 + k]! * (1 - Math.exp(-seconds / constantS)),
    coefficients[FIRST_LOAD]!,
  );
}

/** Volts at no load at the share of the charge drawn, 0 to 1. */
export function openCircuitVolts(coefficients: Float64Array, share: number): number {
  const u = 2 * share - 1;
  let before = 1;
  let polynomial = u;
  let volts = coefficients[0]! + u * coefficients[1]!;
  for (let k = 1; k < DEGREE; k++) {
    const next = nextPolynomial(k, u, polynomial, before);
    before = polynomial;
    polynomial = next;
    volts += polynomial * coefficients[k + 1]!;
  }
  return volts;
}

/** Polynomial k + 1 of Legendre from the two before it: nearly orthogonal, so the fit keeps its digits. */
function nextPolynomial(k: number, u: number, polynomial: number, before: number): number {
  return ((2 * k + 1) * u * polynomial - k * before) / (k + 1);
}

/** Legendre polynomials of 2 share - 1, degree 0 to 5, one array each. */
export function polynomialColumns(share: Float64Array): Float64Array[] {
  const columns = Array.from({ length: FIRST_LOAD }, () => new Float64Array(share.length));
  columns[0]!.fill(1);
  for (let i = 0; i < share.length; i++) columns[1]![i] = 2 * share[i]! - 1;
  for (let k = 1; k < DEGREE; k++) {
    const [before, polynomial, next] = [columns[k - 1]!, columns[k]!, columns[k + 1]!];
    for (let i = 0; i < share.length; i++) {
      next[i] = nextPolynomial(k, columns[1]![i]!, polynomial[i]!, before[i]!);
    }
  }
  return columns;
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

/** The current and its filtered copies, in `buffers` where there are any. */
export function loadColumns(
  filters: LoadFilters,
  currentA: Float64Array,
  buffers: readonly Float64Array[] = [],
): Float64Array[] {
  return [currentA, ...FILTERS_S.map((constantS, k) => filters(constantS)(currentA, buffers[k]))];
}

/** The regressors, then the volts. */
export function regressorColumns(
  packV: Float64Array,
  loads: readonly Float64Array[],
  share: Float64Array,
): Float64Array[] {
  const negative = loads.map((load) => {
    const column = new Float64Array(load.length);
    for (let i = 0; i < load.length; i++) column[i] = -load[i]!;
    return column;
  });
  return [...polynomialColumns(share), ...negative, packV];
}
