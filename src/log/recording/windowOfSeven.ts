/** Points on either side of the one looked at. */
export const halfWindow = 3;

/** The seven values centred on `present[at]`, in order of size. */
export function orderedWindow(values: Float64Array, present: Int32Array, at: number): Float64Array {
  const window = new Float64Array(2 * halfWindow + 1);
  for (let i = -halfWindow; i <= halfWindow; i++) window[i + halfWindow] = values[present[at + i]!]!;
  return window.sort();
}

export function centre(ordered: Float64Array): number {
  return ordered[halfWindow]!;
}

/** True when the seven points follow each other with no hole between them. */
export function isWholePiece(
  timeS: Float64Array,
  present: Int32Array,
  at: number,
  holeLimitS: number,
): boolean {
  for (let i = at - halfWindow; i < at + halfWindow; i++) {
    if (timeS[present[i + 1]!]! - timeS[present[i]!]! > holeLimitS) return false;
  }
  return true;
}
