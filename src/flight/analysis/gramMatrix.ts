import { withScratch } from "../../base/statistics/index.ts";

/**
 * Sums of products of a few regressors and one response, so that many fits over parts of the same rows cost
 * one pass over the data: parts add and subtract. Regressors must be of similar size and far from dependent
 * (centred, orthogonal polynomials), because the normal equations square the condition number.
 */
export interface GramMatrix {
  /** Number of regressors. */
  readonly size: number;
  /** Row-major (size + 1) x (size + 1), the response last; only the upper triangle is kept. */
  readonly sums: Float64Array;
}

export function emptyGram(size: number): GramMatrix {
  return { size, sums: new Float64Array((size + 1) * (size + 1)) };
}

/** Adds the row (the regressors, then the response) that starts at `rows[offset]`, with a weight >= 0. */
export function addRow(gram: GramMatrix, rows: Float64Array, offset: number, weight: number): void {
  const width = gram.size + 1;
  const { sums } = gram;
  for (let i = 0; i < width; i++) {
    const scaled = weight * rows[offset + i]!;
    for (let j = i; j < width; j++) sums[i * width + j]! += scaled * rows[offset + j]!;
  }
}

/** The regressors, then the response: one array each, all of one length. */
export type GramColumns = readonly Float64Array[];

/** Sums of products over the rows `from` to `to - 1`, each row with its weight >= 0. */
export function gramOf(columns: GramColumns, weights: Float64Array, from: number, to: number): GramMatrix {
  const gram = emptyGram(columns.length - 1);
  const parts = columns.map((column) => column.subarray(from, to));
  withScratch(to - from, (scaled) => {
    parts.forEach((column, i) => {
      for (let row = 0; row < scaled.length; row++) scaled[row] = weights[from + row]! * column[row]!;
      addProducts(gram, i, scaled, parts, i, parts.length);
    });
  });
  return gram;
}

/**
 * Adds the products of `factor`, which stands for column `i`, with the columns `first` to `end - 1`. Four sums at a
 * time run over all rows, each in the order of the rows: this loop is where the time of a fit goes.
 */
export function addProducts(
  { size, sums }: GramMatrix,
  i: number,
  factor: Float64Array,
  columns: GramColumns,
  first: number,
  end: number,
): void {
  const at = i * (size + 1);
  let j = first;
  for (; j + 3 < end; j += 4) {
    const a = columns[j]!;
    const b = columns[j + 1]!;
    const c = columns[j + 2]!;
    const d = columns[j + 3]!;
    let ofA = sums[at + j]!;
    let ofB = sums[at + j + 1]!;
    let ofC = sums[at + j + 2]!;
    let ofD = sums[at + j + 3]!;
    for (let row = 0; row < factor.length; row++) {
      const value = factor[row]!;
      ofA += value * a[row]!;
      ofB += value * b[row]!;
      ofC += value * c[row]!;
      ofD += value * d[row]!;
    }
    sums[at + j] = ofA;
    sums[at + j + 1] = ofB;
    sums[at + j + 2] = ofC;
    sums[at + j + 3] = ofD;
  }
  for (; j < end; j++) {
    const column = columns[j]!;
    let sum = sums[at + j]!;
    for (let row = 0; row < factor.length; row++) sum += factor[row]! * column[row]!;
    sums[at + j] = sum;
  }
}

/** first + factor * second, both of one size. */
export function combineGrams(first: GramMatrix, second: GramMatrix, factor: number): GramMatrix {
  return { size: first.size, sums: first.sums.map((sum, i) => sum + factor * second.sums[i]!) };
}

/** Below this share of its own diagonal, what is left of a pivot counts as rounding noise. */
const DEPENDENT_PIVOT = 1e-12;

/**
 * Coefficients that minimise the weighted squared residuals, by Cholesky factors, and that minimum.
 * Null when the rows do not fix them.
 */
export function solveGram(
  gram: GramMatrix,
): { readonly coefficients: Float64Array; readonly sumOfSquares: number } | null {
  const { size, sums } = gram;
  const width = size + 1;
  const factor = new Float64Array(width * width);
  for (let i = 0; i < width; i++) {
    for (let j = i; j < width; j++) {
      let rest = sums[i * width + j]!;
      for (let k = 0; k < i; k++) rest -= factor[k * width + i]! * factor[k * width + j]!;
      if (i === size) return { coefficients: backSubstitute(factor, size), sumOfSquares: Math.max(0, rest) };
      if (j === i) {
        if (!(rest > DEPENDENT_PIVOT * sums[i * width + i]!)) return null;
        factor[i * width + i] = Math.sqrt(rest);
      } else factor[i * width + j] = rest / factor[i * width + i]!;
    }
  }
  return null;
}

/**
 * The same with the coefficients from `firstBounded` on held at 0 or above: the most negative one is left out
 * until none is negative.
 */
export function solveGramBounded(gram: GramMatrix, firstBounded: number): ReturnType<typeof solveGram> {
  let kept = Array.from({ length: gram.size }, (_, i) => i);
  for (;;) {
    const solved = solveGram(subGram(gram, kept));
    if (solved === null) return null;
    let worst = -1;
    kept.forEach((column, k) => {
      const value = solved.coefficients[k]!;
      if (column >= firstBounded && value < 0 && (worst < 0 || value < solved.coefficients[worst]!))
        worst = k;
    });
    if (worst < 0) {
      const coefficients = new Float64Array(gram.size);
      kept.forEach((column, k) => {
        coefficients[column] = solved.coefficients[k]!;
      });
      return { coefficients, sumOfSquares: solved.sumOfSquares };
    }
    kept = kept.filter((_, k) => k !== worst);
  }
}

function subGram(gram: GramMatrix, kept: readonly number[]): GramMatrix {
  if (kept.length === gram.size) return gram;
  const columns = [...kept, gram.size];
  const sub = emptyGram(kept.length);
  columns.forEach((row, i) => {
    for (let j = i; j < columns.length; j++) {
      sub.sums[i * columns.length + j] = gram.sums[row * (gram.size + 1) + columns[j]!]!;
    }
  });
  return sub;
}

function backSubstitute(factor: Float64Array, size: number): Float64Array {
  const width = size + 1;
  const solution = new Float64Array(size);
  for (let i = size - 1; i >= 0; i--) {
    let rest = factor[i * width + size]!;
    for (let j = i + 1; j < size; j++) rest -= factor[i * width + j]! * solution[j]!;
    solution[i] = rest / factor[i * width + i]!;
  }
  return solution;
}
