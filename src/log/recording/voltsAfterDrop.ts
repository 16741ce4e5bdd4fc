import { median } from "../../base/statistics/index.ts";
import type { RowRun } from "./lowRuns.ts";
import { smallestStep } from "./resolution.ts";

/** Windows before and after the drop; in between the volts settle. */
const BEFORE_S = 3;
const SETTLED_S = 2;
const AFTER_S = 7;
const FEWEST_ROWS = 3;
/** Volts that rise by less than this share of what the lost load held down show that it goes on. */
const LEAST_SHARE = 0.35;
/** The rise to expect must be clear of the volts' steps, and of their noise as a share. */
const CLEAR_STEPS = 3;
const CLEAR_SHARE = 0.01;
/** Differences over about a second give what one ampere holds down. */
const DIFFERENCE_S = 1;

/**
 * True when the current falls to nothing at the start of `run` and the volts do not rise as the ampere before
 * held them down: the load goes on. False where the log begins there or the rise to expect is too small to see.
 */
export function recoversLessThanLoad(
  timeS: Float64Array,
  amps: Float64Array,
  volts: Float64Array,
  { firstRow, lastRow }: RowRun,
): boolean {
  const dropS = timeS[firstRow]!;
  const before = { fromS: dropS - BEFORE_S, toS: dropS - 1e-9 };
  const after = { fromS: dropS + SETTLED_S, toS: Math.min(timeS[lastRow]!, dropS + AFTER_S) };
  const ampsBefore = medianBetween(timeS, amps, before, firstRow);
  const voltsBefore = medianBetween(timeS, volts, before, firstRow);
  const voltsAfter = medianBetween(timeS, volts, after, firstRow);
  if (ampsBefore === null || voltsBefore === null || voltsAfter === null) return false;
  const expectedV = ohms(timeS, amps, volts) * ampsBefore;
  const clearV = Math.max(CLEAR_STEPS * smallestStep(volts), CLEAR_SHARE * voltsBefore);
  return expectedV > clearV && voltsAfter - voltsBefore < LEAST_SHARE * expectedV;
}

function medianBetween(
  timeS: Float64Array,
  values: Float64Array,
  { fromS, toS }: { readonly fromS: number; readonly toS: number },
  nearRow: number,
): number | null {
  let row = nearRow;
  while (row > 0 && timeS[row - 1]! >= fromS) row--;
  const found: number[] = [];
  for (; row < timeS.length && timeS[row]! <= toS; row++) {
    if (timeS[row]! >= fromS && !Number.isNaN(values[row]!)) found.push(values[row]!);
  }
  return found.length < FEWEST_ROWS ? null : median(found);
}

/** Volts that one ampere holds down: slope of the differences over a second. 0 where the current never moves. */
function ohms(timeS: Float64Array, amps: Float64Array, volts: Float64Array): number {
  let product = 0;
  let square = 0;
  let tail = 0;
  for (let row = 1; row < timeS.length; row++) {
    while (tail + 1 < row && timeS[tail + 1]! <= timeS[row]! - DIFFERENCE_S) tail++;
    const change = amps[row]! - amps[tail]!;
    const drop = volts[tail]! - volts[row]!;
    if (Number.isNaN(change * drop) || timeS[row]! - timeS[tail]! > 2 * DIFFERENCE_S) continue;
    product += change * drop;
    square += change * change;
  }
  return square > 0 ? product / square : 0;
}
