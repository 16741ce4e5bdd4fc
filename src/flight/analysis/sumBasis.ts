import { medianInPlace, withScratch } from "../../base/statistics/index.ts";
import {
  currentCeiling,
  holeLimitS,
  negativeOffsetA,
  type Recording,
  restCurrentA,
  type StuckStretch,
  smallestStep,
  stuckStretches,
} from "../../log/recording/index.ts";
import type { Integrand } from "./trapezoid.ts";

/** What every sum over the current of one recording needs; it depends on the whole log, not on the stretch. */
export interface SumBasis {
  /** Negative reading of the current sensor at rest, or 0. */
  readonly offsetA: number;
  /** Smallest step of the current. */
  readonly stepA: number;
  /** Rows with current, or with current and volts, further apart than this are a gap. */
  readonly limitOfCurrentS: number;
  readonly limitOfBothS: number;
  /** The end of the current sensor's range, where the log shows it: what reads this may be more. */
  readonly ceilingA: number | null;
  /** Stretches in which the current sensor sticks, below its ceiling, while another channel moves. */
  readonly stuck: readonly StuckStretch[];
}

/** Recordings are never changed, and a flight asks for a dozen sums: each recording is looked through once. */
const known = new WeakMap<Recording, SumBasis>();

export function sumBasis(recording: Recording, amps: Float64Array): SumBasis {
  const before = known.get(recording);
  if (before !== undefined) return before;
  const volts = recording.channels.get("packVoltage") ?? null;
  const ceilingA = currentCeiling(recording.channels)?.ceilingA ?? null;
  const basis: SumBasis = {
    offsetA: negativeOffsetA(restCurrentA(amps)),
    stepA: smallestStep(amps),
    limitOfCurrentS: gapLimitS(recording, { timeS: recording.timeS, amps, volts: null }),
    limitOfBothS: gapLimitS(recording, { timeS: recording.timeS, amps, volts }),
    ceilingA,
    stuck: stuckStretches(recording.timeS, recording.channels).filter(
      ({ channel, value }) => channel === "current" && value !== ceilingA,
    ),
  };
  known.set(recording, basis);
  return basis;
}

/** max(2 s, 5 median steps) of the rows that hold what is summed; most often those are the usable rows. */
function gapLimitS(recording: Recording, integrand: Integrand): number {
  const rows = rowsHolding(integrand);
  if (rows < 2 || rows === recording.rowsUsed) return holeLimitS(recording.stepS);
  return holeLimitS(withScratch(rows - 1, (steps) => medianStepS(integrand, steps)));
}

function holds({ amps, volts }: Integrand, row: number): boolean {
  return !Number.isNaN(amps[row]!) && !(volts !== null && Number.isNaN(volts[row]!));
}

function rowsHolding(integrand: Integrand): number {
  let rows = 0;
  for (let row = 0; row < integrand.timeS.length; row++) if (holds(integrand, row)) rows++;
  return rows;
}

function medianStepS(integrand: Integrand, steps: Float64Array): number {
  let count = 0;
  let before = -1;
  for (let row = 0; row < integrand.timeS.length; row++) {
    if (!holds(integrand, row)) continue;
    if (before >= 0) steps[count++] = integrand.timeS[row]! - integrand.timeS[before]!;
    before = row;
  }
  return medianInPlace(steps);
}
