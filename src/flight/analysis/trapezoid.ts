import type { RowRange } from "./segments.ts";

/** What is integrated: amperes, or volts times amperes where `volts` is given. */
export interface Integrand {
  readonly timeS: Float64Array;
  readonly amps: Float64Array;
  readonly volts: Float64Array | null;
}

/** Two consecutive rows with values too far apart for a trapezoid, cut to the times asked for. */
export interface SumGap {
  readonly rowBefore: number;
  readonly rowAfter: number;
  readonly startS: number;
  readonly endS: number;
  /** Of the straight line between its edges, in units of the integrand times seconds. */
  readonly linearSum: number;
}

/** Sums over the pairs of rows that a trapezoid may bridge, in units of the integrand times seconds. */
export interface TrapezoidSum {
  readonly covered: number;
  readonly coveredS: number;
  /** Integral of dt, or of volts dt: what one ampere of offset is worth. */
  readonly perAmpere: number;
  /** Sum of (change x step)^2 / 12: variance from not knowing the value between samples. */
  readonly samplingVariance: number;
  readonly gaps: readonly SumGap[];
  /** First and last time that a pair of rows reaches inside the times asked for; NaN without a pair. */
  readonly firstS: number;
  readonly lastS: number;
}

/**
 * Plain trapezoid sums over consecutive rows of `range` that hold every channel, not further apart than
 * `limitS`, between `startS` and `endS` (a pair across an end counts with its part, on the straight line).
 */
export function trapezoidSum(
  integrand: Integrand,
  range: RowRange,
  limitS: number,
  startS = Number.NEGATIVE_INFINITY,
  endS = Number.POSITIVE_INFINITY,
): TrapezoidSum {
  const gaps: SumGap[] = [];
  const running = new Float64Array(RUNNING.length);
  running[BEFORE] = -1;
  running[FIRST_S] = running[LAST_S] = Number.NaN;
  const limits = { limitS, startS, endS };
  for (let row = range.firstRow; row <= range.lastRow; row += ROWS_AT_ONCE) {
    addRows(integrand, row, Math.min(range.lastRow, row + ROWS_AT_ONCE - 1), limits, running, gaps);
  }
  return {
    covered: running[COVERED]!,
    coveredS: running[COVERED_S]!,
    perAmpere: running[PER_AMPERE]!,
    samplingVariance: running[VARIANCE]!,
    gaps,
    firstS: running[FIRST_S]!,
    lastS: running[LAST_S]!,
  };
}

/** So many rows are summed by one call: a loop over a whole log would end before the compiler has taken it up well. */
export const ROWS_AT_ONCE = 4096;

/** What runs on from call to call: sums, and the row with a value before. */
const RUNNING = [0, 1, 2, 3, 4, 5, 6] as const;
const [COVERED, COVERED_S, PER_AMPERE, VARIANCE, FIRST_S, LAST_S, BEFORE] = RUNNING;

function addRows(
  { timeS, amps, volts }: Integrand,
  firstRow: number,
  lastRow: number,
  { limitS, startS, endS }: { readonly limitS: number; readonly startS: number; readonly endS: number },
  running: Float64Array,
  gaps: SumGap[],
): void {
  let covered = running[COVERED]!;
  let coveredS = running[COVERED_S]!;
  let perAmpere = running[PER_AMPERE]!;
  let samplingVariance = running[VARIANCE]!;
  let firstS = running[FIRST_S]!;
  let lastS = running[LAST_S]!;
  let before = Math.trunc(running[BEFORE]!);
  for (let row = firstRow; row <= lastRow; row++) {
    const value = volts === null ? amps[row]! : amps[row]! * volts[row]!;
    if (Number.isNaN(value)) continue;
    const time = timeS[row]!;
    if (before >= 0 && time > startS && timeS[before]! < endS) {
      const beforeS = timeS[before]!;
      const valueBefore = volts === null ? amps[before]! : amps[before]! * volts[before]!;
      const fromS = Math.max(beforeS, startS);
      const toS = Math.min(time, endS);
      const slope = (value - valueBefore) / (time - beforeS);
      const stepS = toS - fromS;
      if (Number.isNaN(firstS)) firstS = fromS;
      lastS = toS;
      const sum = (valueBefore + slope * ((fromS + toS) / 2 - beforeS)) * stepS;
      if (time - beforeS <= limitS) {
        covered += sum;
        coveredS += stepS;
        perAmpere += volts === null ? stepS : (stepS * (volts[before]! + volts[row]!)) / 2;
        samplingVariance += (slope * stepS * stepS) ** 2 / 12;
      } else gaps.push({ rowBefore: before, rowAfter: row, startS: fromS, endS: toS, linearSum: sum });
    }
    before = row;
  }
  running[COVERED] = covered;
  running[COVERED_S] = coveredS;
  running[PER_AMPERE] = perAmpere;
  running[VARIANCE] = samplingVariance;
  running[FIRST_S] = firstS;
  running[LAST_S] = lastS;
  running[BEFORE] = before;
}

/** Largest value of the integrand within `reachS` before and after a gap; its edges are among them. */
export function largestAround({ timeS, amps, volts }: Integrand, gap: SumGap, reachS: number): number {
  let largest = Number.NEGATIVE_INFINITY;
  const look = (row: number) => {
    const value = volts === null ? amps[row]! : amps[row]! * volts[row]!;
    if (value > largest) largest = value;
  };
  const earliestS = timeS[gap.rowBefore]! - reachS;
  const latestS = timeS[gap.rowAfter]! + reachS;
  for (let row = gap.rowBefore; row >= 0 && timeS[row]! >= earliestS; row--) look(row);
  for (let row = gap.rowAfter; row < timeS.length && timeS[row]! <= latestS; row++) look(row);
  return largest;
}
