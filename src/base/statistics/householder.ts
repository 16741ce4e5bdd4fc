/** Below this share of its own length, what is left of a scaled column counts as rounding noise. */
const DEPENDENT_COLUMN = 1e-12;

/** The upper triangle R of X = QR and the first rows of Q'y, in the units of the unscaled columns. */
export interface TriangularSystem {
  /** r[i][j], j >= i; square, one row per column of X, of the columns scaled to length 1. */
  readonly r: readonly Float64Array[];
  readonly rightSide: Float64Array;
  /** Euclidean length of each column of X. */
  readonly scales: readonly number[];
}

/**
 * Reduces a least-squares problem by Householder reflections (Golub and Van Loan, Matrix Computations,
 * 4th edition 2013, section 5.3.2), each column first scaled to length 1. Works in place: `columns` and
 * `y` are overwritten. Null when a column depends linearly on those before it, to within rounding.
 */
export function reduceByReflections(
  columns: readonly Float64Array[],
  y: Float64Array,
): TriangularSystem | null {
  const scales = columns.map(scaleToUnitLength);
  const r = columns.map(() => new Float64Array(columns.length));
  for (let k = 0; k < columns.length; k++) {
    const pivot = columns[k]!;
    const diagonal = reflector(pivot, k);
    if (!(Math.abs(diagonal) > DEPENDENT_COLUMN)) return null;
    r[k]![k] = diagonal;
    for (let j = k + 1; j < columns.length; j++) {
      reflect(pivot, k, columns[j]!);
      r[k]![j] = columns[j]![k]!;
    }
    reflect(pivot, k, y);
  }
  return { r, rightSide: y.slice(0, columns.length), scales };
}

/** Solves R b = rightSide, then undoes the column scaling. */
export function solveTriangular(system: TriangularSystem): number[] {
  const { r, rightSide, scales } = system;
  const solution = new Array<number>(scales.length).fill(0);
  for (let i = scales.length - 1; i >= 0; i--) {
    let rest = rightSide[i]!;
    for (let j = i + 1; j < scales.length; j++) rest -= r[i]![j]! * solution[j]!;
    solution[i] = rest / r[i]![i]!;
  }
  return solution.map((value, i) => value / scales[i]!);
}

/** (X'X)^-1 = R^-1 R^-T of the unscaled columns. */
export function inverseOfCrossProduct(system: TriangularSystem): number[][] {
  const count = system.scales.length;
  const unit = (k: number) => Float64Array.from({ length: count }, (_, i) => (i === k ? 1 : 0));
  const inverse = system.scales.map((_, k) => solveTriangular({ ...system, rightSide: unit(k) }));
  return system.scales.map((_, i) =>
    system.scales.map((_, j) => inverse.reduce((sum, column) => sum + column[i]! * column[j]!, 0)),
  );
}

function scaleToUnitLength(column: Float64Array): number {
  let largest = 0;
  for (const value of column) largest = Math.max(largest, Math.abs(value));
  if (largest === 0) return 1;
  let sum = 0;
  for (const value of column) sum += (value / largest) ** 2;
  const length = largest * Math.sqrt(sum);
  for (let i = 0; i < column.length; i++) column[i]! /= length;
  return length;
}

/** Turns column[k..] into the reflector v with v'v = 2; returns the diagonal element of R. */
function reflector(column: Float64Array, k: number): number {
  let sum = 0;
  for (let i = k; i < column.length; i++) sum += column[i]! * column[i]!;
  const length = Math.sqrt(sum);
  if (length === 0) return 0;
  const first = column[k]!;
  const diagonal = first > 0 ? -length : length;
  column[k] = first - diagonal;
  const factor = 1 / Math.sqrt(length * (length + Math.abs(first)));
  for (let i = k; i < column.length; i++) column[i]! *= factor;
  return diagonal;
}

function reflect(reflectorColumn: Float64Array, k: number, target: Float64Array): void {
  let product = 0;
  for (let i = k; i < target.length; i++) product += reflectorColumn[i]! * target[i]!;
  for (let i = k; i < target.length; i++) target[i]! -= product * reflectorColumn[i]!;
}
