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

/** As `addRow` with weight 1, but only the products with a factor among the columns `first` to `end - 1`. */
export function addPartOfRow(gram: GramMatrix, row: Float64Array, first: number, end: number): void {
  const width = gram.size + 1;
  const { sums } = gram;
  for (let i = 0; i < end; i++) {
    const value = row[i]!;
    const to = i < first ? end : width;
    for (let j = Math.max(i, first); j < to; j++) sums[i * width + j]! += value * row[j]!;
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
