/** 0-based columns that by their numbers alone are most like these channels; null where none is. */
export interface LikelyColumns {
  readonly time: number | null;
  readonly packVoltage: number | null;
  readonly current: number | null;
}

/** Guesses to fill in an option that the user checks before use. `rows`: numbers by row and column. */
export function likelyColumns(rows: readonly (readonly number[])[]): LikelyColumns {
  const width = Math.max(0, ...rows.map((row) => row.length));
  const columns = Array.from({ length: width }, (_, at) => rows.map((row) => row[at] ?? Number.NaN));
  const rises = (values: readonly number[]) =>
    values.every((value, row) => row === 0 || value > values[row - 1]!);
  const time = rows.length < 2 ? -1 : columns.findIndex(rises);
  const left = (at: number) => at !== time && !columns[at]!.some(Number.isNaN);
  const volts = columns.findIndex((values, at) => left(at) && isVolts(values));
  const current = columns.findIndex((values, at) => left(at) && at !== volts && isAmps(values));
  const known = (at: number) => (at < 0 ? null : at);
  return { time: known(time), packVoltage: known(volts), current: known(current) };
}

function isVolts(values: readonly number[]): boolean {
  const low = Math.min(...values);
  const high = Math.max(...values);
  return low >= 6 && high <= 70 && low > high * 0.6 && values.some((value) => !Number.isInteger(value));
}

function isAmps(values: readonly number[]): boolean {
  return Math.min(...values) >= -5 && Math.max(...values) <= 400;
}
