import type { Facts } from "../../aircraft/facts.ts";
import { COULOMBS_PER_MAH, JOULES_PER_WH } from "../../base/quantity/index.ts";
import type { Recording } from "../../log/recording/index.ts";
import { channelOrWhy } from "./channelOrWhy.ts";
import { isAtCeiling } from "./currentAtCeiling.ts";
import { resolutionVariance } from "./resolutionVariance.ts";
import type { RowRange } from "./segments.ts";
import { stuckSums } from "./stuckSums.ts";
import { type SumBasis, sumBasis } from "./sumBasis.ts";
import { type Integrand, type SumGap, type TrapezoidSum, trapezoidSum } from "./trapezoid.ts";

/** Charge is the integral of current, energy of volts times current. */
export type SumKind = "charge" | "energy";

/** A stretch of rows; the times cut it closer where they are given. */
export interface SumRange extends RowRange {
  readonly startS?: number;
  readonly endS?: number;
}

/** A sum with all that its interval needs, in units of the integrand times seconds. */
export interface Summed {
  readonly integrand: Integrand;
  readonly range: SumRange;
  readonly sum: TrapezoidSum;
  /** First rows after a jump of unknown length: a gap across one cannot be estimated. */
  readonly unknownRows: readonly number[];
  /** Rows with values further apart than this are a gap. */
  readonly limitS: number;
  /** Half-width of the gain of the sensors together, as a share: constant over the flight. */
  readonly gainShare: number;
  /** Negative reading of the current sensor at rest, or 0. */
  readonly offsetA: number;
  readonly resolutionVariance: number;
  /** Stretches of the current that say nothing, as they reach into the range. */
  readonly stuck: readonly SumGap[];
  /** True where the current reads the end of its sensor's range: more may have flowed. */
  readonly isAtCeiling: boolean;
  readonly unit: "mAh" | "Wh";
  /** Coulombs in a mAh, joules in a Wh. */
  readonly perUnit: number;
}

/** Sums what `kind` says over `range`, or the reason why it cannot. */
export function summed(
  recording: Recording,
  kind: SumKind,
  range: SumRange,
  { sensors }: Facts,
): Summed | { readonly why: string } {
  const amps = channelOrWhy(recording, "current");
  if (amps.values === null) return { why: amps.why };
  const volts = kind === "energy" ? channelOrWhy(recording, "packVoltage") : null;
  if (volts !== null && volts.values === null) return { why: volts.why };
  const integrand = { timeS: recording.timeS, amps: amps.values, volts: volts?.values ?? null };
  const basis = sumBasis(recording, amps.values);
  const limitS = kind === "charge" ? basis.limitOfCurrentS : basis.limitOfBothS;
  const gainI = sensors.currentAccuracyPct / 100;
  const gainV = kind === "energy" ? sensors.voltageAccuracyPct / 100 : 0;
  return {
    integrand,
    range,
    ...sumsOver(recording, integrand, range, limitS, basis),
    unknownRows: recording.holes.filter((hole) => hole.isUnknownLength).map((hole) => hole.rowAfter),
    limitS,
    gainShare: Math.hypot(gainI, gainV),
    offsetA: basis.offsetA,
    isAtCeiling: isAtCeiling(recording, amps.values, range),
    unit: kind === "charge" ? "mAh" : "Wh",
    perUnit: kind === "charge" ? COULOMBS_PER_MAH : JOULES_PER_WH,
  };
}

type Sums = Pick<Summed, "sum" | "stuck" | "resolutionVariance">;

/** Recordings are never changed, and the same stretch is asked for by several measures. */
const known = new WeakMap<Recording, Map<string, Sums>>();

function sumsOver(
  recording: Recording,
  integrand: Integrand,
  range: SumRange,
  limitS: number,
  basis: SumBasis,
): Sums {
  const ofRecording = known.get(recording) ?? new Map<string, Sums>();
  known.set(recording, ofRecording);
  const { firstRow, lastRow, startS, endS } = range;
  const key = [integrand.volts === null, firstRow, lastRow, startS, endS].join(" ");
  const sums = ofRecording.get(key) ?? {
    sum: trapezoidSum(integrand, range, limitS, startS, endS),
    stuck: stuckSums(integrand, range, limitS, basis.stuck),
    resolutionVariance: resolutionVariance(integrand, range, limitS, basis.stepA),
  };
  ofRecording.set(key, sums);
  return sums;
}
