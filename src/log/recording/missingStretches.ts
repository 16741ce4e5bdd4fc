/** A stretch in which one channel holds no value although rows go on. */
export interface MissingStretch {
  /** First and last row without a value. */
  readonly firstRow: number;
  readonly lastRow: number;
  /** From the last value before to the first after; at an end of the log, to that end. */
  readonly seconds: number;
}

/** Stretches without a value longer than the hole limit; a channel without any value is one stretch. */
export function missingStretches(
  timeS: Float64Array,
  values: Float64Array,
  holeLimitS: number,
): MissingStretch[] {
  const stretches: MissingStretch[] = [];
  const last = values.length - 1;
  for (let row = 0; row <= last; row++) {
    if (!Number.isNaN(values[row]!)) continue;
    const firstRow = row;
    while (row < last && Number.isNaN(values[row + 1]!)) row++;
    const seconds = timeS[Math.min(last, row + 1)]! - timeS[Math.max(0, firstRow - 1)]!;
    if (seconds > holeLimitS) stretches.push({ firstRow, lastRow: row, seconds });
  }
  return stretches;
}
