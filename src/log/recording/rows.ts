/** True when two rows hold the same value, or are both missing, in every channel. */
export function isSameRow(channels: readonly Float64Array[], first: number, second: number): boolean {
  for (const values of channels) {
    if (!Object.is(values[first], values[second]) && values[first] !== values[second]) return false;
  }
  return true;
}

/** The rows of `values` named by `rows`, in that order; the array itself where `rows` is null: every row in order. */
export function rowsOf(values: Float64Array, rows: Int32Array | null): Float64Array {
  if (rows === null) return values;
  const taken = new Float64Array(rows.length);
  for (let i = 0; i < rows.length; i++) taken[i] = values[rows[i]!]!;
  return taken;
}

export function isEveryRowInOrder(rows: Int32Array, length: number): boolean {
  if (rows.length !== length) return false;
  for (let i = 0; i < length; i++) if (rows[i] !== i) return false;
  return true;
}
