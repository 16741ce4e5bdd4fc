import { medianInPlace } from "../../base/statistics/index.ts";
import type { ReadLog } from "../reading/index.ts";
import { isSameRow } from "./rows.ts";

/** Share of the stamps that several different rows must carry before the clock counts as coarse. */
const COARSE_SHARE = 0.1;

/** What the written times look like before any repair. */
export interface Stamps {
  /** Median of the steps forward between stamps, seconds; the clock's resolution when none goes forward. */
  readonly stepS: number;
  /** True when the clock shows fewer stamps than rows: several different rows carry the same one. */
  readonly isCoarse: boolean;
  /** Mean number of rows that carry one stamp, the first and last stamp (cut short) apart; 1 unless coarse. */
  readonly rowsPerStamp: number;
}

/** Looks at the times of `rows`, all readable, in the order of the log. */
export function stampsOf(log: ReadLog, rows: Int32Array, channels: readonly Float64Array[]): Stamps {
  const stepS = medianStepForwardS(log.timeS, rows) || log.clock.resolutionS;
  let stamps = rows.length > 0 ? 1 : 0;
  let sharedStamps = 0;
  let isShared = false;
  let firstStampRows = rows.length;
  let lastStampStart = 0;
  for (let i = 1; i < rows.length; i++) {
    const row = rows[i]!;
    const before = rows[i - 1]!;
    if (log.timeS[row] !== log.timeS[before]) {
      if (stamps === 1) firstStampRows = i;
      lastStampStart = i;
      stamps++;
      isShared = false;
    } else if (!isShared && !isSameRow(channels, before, row)) {
      sharedStamps++;
      isShared = true;
    }
  }
  const isCoarse = sharedStamps > COARSE_SHARE * stamps;
  if (!isCoarse) return { stepS, isCoarse, rowsPerStamp: 1 };
  const wholeStamps = stamps > 2 ? stamps - 2 : stamps;
  const rowsInWhole = stamps > 2 ? lastStampStart - firstStampRows : rows.length;
  return { stepS, isCoarse, rowsPerStamp: rowsInWhole / wholeStamps };
}

function medianStepForwardS(timeS: Float64Array, rows: Int32Array): number {
  const steps = new Float64Array(Math.max(0, rows.length - 1));
  let count = 0;
  for (let i = 1; i < rows.length; i++) {
    const step = timeS[rows[i]!]! - timeS[rows[i - 1]!]!;
    if (step > 0) steps[count++] = step;
  }
  return count === 0 ? 0 : medianInPlace(steps.subarray(0, count));
}
