/** Rows `firstRow`..`lastRow`, both included. */
export interface RowRun {
  readonly firstRow: number;
  readonly lastRow: number;
}

const FEWEST_ROWS = 5;

/** Runs of values up to `most` that last for `leastS` and five rows; missing rows are passed over. */
export function lowRuns(timeS: Float64Array, values: Float64Array, most: number, leastS: number): RowRun[] {
  const runs: RowRun[] = [];
  let firstRow = -1;
  let lastRow = -1;
  let rows = 0;
  const close = () => {
    if (rows >= FEWEST_ROWS && timeS[lastRow]! - timeS[firstRow]! >= leastS) runs.push({ firstRow, lastRow });
    firstRow = -1;
    rows = 0;
  };
  for (let row = 0; row < values.length; row++) {
    const value = values[row]!;
    if (Number.isNaN(value)) continue;
    if (value > most) {
      close();
      continue;
    }
    if (firstRow < 0) firstRow = row;
    lastRow = row;
    rows++;
  }
  close();
  return runs;
}
