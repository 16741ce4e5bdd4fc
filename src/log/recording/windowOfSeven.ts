/** Points on either side of the one looked at. */
export const halfWindow = 3;

/** Rows that hold a value, in order; null where every row does. */
export type PresentRows = Int32Array | null;

export function rowAt(present: PresentRows, at: number): number {
  return present === null ? at : present[at]!;
}

/** The seven values centred on the row at place `at`, in order of size. */
export function orderedWindow(values: Float64Array, present: PresentRows, at: number): Float64Array {
  const window = new Float64Array(2 * halfWindow + 1);
  for (let i = -halfWindow; i <= halfWindow; i++) window[i + halfWindow] = values[rowAt(present, at + i)]!;
  return window.sort();
}

export function centre(ordered: Float64Array): number {
  return ordered[halfWindow]!;
}

/** True when the seven points follow each other with no hole between them. */
export function isWholePiece(
  timeS: Float64Array,
  present: PresentRows,
  at: number,
  holeLimitS: number,
): boolean {
  for (let i = at - halfWindow; i < at + halfWindow; i++) {
    if (timeS[rowAt(present, i + 1)]! - timeS[rowAt(present, i)]! > holeLimitS) return false;
  }
  return true;
}
