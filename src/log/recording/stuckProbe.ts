import type { RowRun } from "./lowRuns.ts";
import { smallestStep } from "./resolution.ts";
import { spreadOf } from "./spread.ts";

/** A probe says something of the load only where it moves by this much over the log, */
const LEAST_RANGE_K = 10;
/** in steps no coarser than this. */
const COARSEST_STEP_K = 1.5;
/** One reading through so many seconds of load and as many of rest: the two do not settle at one temperature. */
const LEAST_LOADED_S = 20;
const LEAST_RESTING_S = 20;
/** Shares of the current's spread that are load and rest. */
const LOADED_SHARE = 0.25;
const RESTING_SHARE = 0.05;
/** Load that lasts so long at one reading in fine steps is no reading either. */
const FINE_STEP_K = 0.25;
const LONGEST_FINE_S = 45;
const LONGEST_STEP_S = 2;

export interface StuckProbe extends RowRun {
  readonly valueC: number;
  readonly seconds: number;
}

/** Stretches in which a probe repeats one reading although the load, and with it the heat, changes. */
export function stuckProbe(
  timeS: Float64Array,
  values: Float64Array,
  amps: Float64Array,
): readonly StuckProbe[] {
  const range = spreadOf(values);
  const step = smallestStep(values);
  if (!(range.high - range.low >= LEAST_RANGE_K) || !(step <= COARSEST_STEP_K)) return [];
  const { low, high } = spreadOf(amps);
  const limits = { loadedA: low + LOADED_SHARE * (high - low), restingA: low + RESTING_SHARE * (high - low) };
  const isFine = step <= FINE_STEP_K;
  return runsOfOneReading(timeS, values, amps, limits)
    .filter(
      ({ loadedS, restingS }) =>
        (loadedS >= LEAST_LOADED_S && restingS >= LEAST_RESTING_S) || (isFine && loadedS > LONGEST_FINE_S),
    )
    .map(({ firstRow, lastRow }) => ({
      firstRow,
      lastRow,
      valueC: values[firstRow]!,
      seconds: timeS[lastRow]! - timeS[firstRow]!,
    }));
}

interface ReadingRun extends RowRun {
  readonly loadedS: number;
  readonly restingS: number;
}

function runsOfOneReading(
  timeS: Float64Array,
  values: Float64Array,
  amps: Float64Array,
  { loadedA, restingA }: { readonly loadedA: number; readonly restingA: number },
): ReadingRun[] {
  const runs: ReadingRun[] = [];
  let firstRow = -1;
  let lastRow = -1;
  let loadedS = 0;
  let restingS = 0;
  const close = () => {
    if (firstRow >= 0 && loadedS >= LEAST_LOADED_S) runs.push({ firstRow, lastRow, loadedS, restingS });
  };
  for (let row = 0; row < values.length; row++) {
    if (Number.isNaN(values[row]!)) continue;
    if (firstRow < 0 || values[row] !== values[firstRow]) {
      close();
      firstRow = row;
      loadedS = restingS = 0;
    } else {
      const stepS = Math.min(LONGEST_STEP_S, timeS[row]! - timeS[lastRow]!);
      if (amps[row]! >= loadedA) loadedS += stepS;
      if (amps[row]! <= restingA) restingS += stepS;
    }
    lastRow = row;
  }
  close();
  return runs;
}
