import {
  mean,
  pooledSpread,
  sampleStandardDeviation,
  studentTQuantile,
} from "../../base/statistics/index.ts";
import type { LogbookEntry } from "./entry.ts";

/** Spread of put-back over logged charge from one charge to the next (common practice, no published source). */
const PRIOR_SPREAD = 0.02;
const PRIOR_WORTH = 3;
/** Two standard deviations of a hobby charger's own mAh reading (common practice, no published source). */
const CHARGER_ACCURACY = 0.02;
/** A single charge can be ended early or late: fewer than this many calibrate nothing. */
const LEAST_PUT_BACKS = 2;
/** Outside this a put-back belongs to another flight or pack. */
const BELIEVABLE_RATIO = [0.6, 1.6] as const;

/** What the charger says about the current sensor: true amps = logged amps times `gain`. */
export interface CurrentCalibration {
  readonly gain: number;
  /** 95 % interval. */
  readonly low: number;
  readonly high: number;
  readonly putBacks: number;
  /** True when the interval leaves 1 out: then charges of the book are corrected by it. */
  readonly isApplied: boolean;
  /** Flights whose put-back could not be used, and why. */
  readonly leftOut: readonly { readonly flight: string; readonly why: string }[];
}

/** A charger reading and the logged charge it put back. */
interface PutBack {
  readonly flights: readonly string[];
  readonly putBackMah: number;
  readonly loggedMah: number | null;
}

/**
 * Gain of the current sensor from put-backs over flights with the same sensor: the mean log ratio with a
 * Student t interval on a spread pooled with a prior, and the charger's own accuracy in quadrature.
 * Null with fewer than two usable put-backs.
 */
export function calibrateCurrent(entries: readonly LogbookEntry[]): CurrentCalibration | null {
  const all = putBacksOf(entries);
  const leftOut = all.flatMap((one) => {
    const why = doubt(one);
    return why === null ? [] : one.flights.map((flight) => ({ flight, why }));
  });
  const ratios = all
    .filter((one) => doubt(one) === null)
    .map((one) => Math.log(one.putBackMah / (one.loggedMah ?? Number.NaN)));
  if (ratios.length < LEAST_PUT_BACKS) return null;
  const halfWidth = halfWidthOf(ratios);
  const center = mean(ratios);
  const [low, high] = [Math.exp(center - halfWidth), Math.exp(center + halfWidth)];
  return {
    gain: Math.exp(center),
    low,
    high,
    putBacks: ratios.length,
    isApplied: low > 1 || high < 1,
    leftOut,
  };
}

function halfWidthOf(logRatios: readonly number[]): number {
  const { standardDeviation, degreesOfFreedom } = pooledSpread(
    { standardDeviation: sampleStandardDeviation(logRatios), degreesOfFreedom: logRatios.length - 1 },
    { standardDeviation: PRIOR_SPREAD, degreesOfFreedom: PRIOR_WORTH },
  );
  const ofMean =
    (studentTQuantile(0.975, degreesOfFreedom) * standardDeviation) / Math.sqrt(logRatios.length);
  return Math.hypot(ofMean, CHARGER_ACCURACY);
}

/** One record a charge: flights charged together count once, with their logged charges added. */
function putBacksOf(entries: readonly LogbookEntry[]): readonly PutBack[] {
  const byName = new Map(entries.map((entry) => [entry.flight, entry]));
  const records = new Map<string, PutBack>();
  for (const { flight, given } of entries) {
    if (given.putBackMah === null) continue;
    const flights = given.putBackFlights.length > 0 ? [...given.putBackFlights].sort() : [flight];
    const charges = flights.map((name) => usedMah(byName.get(name)));
    const loggedMah = charges.some((charge) => charge === null)
      ? null
      : charges.reduce<number>((sum, charge) => sum + (charge ?? 0), 0);
    records.set(flights.join("|"), { flights, putBackMah: given.putBackMah, loggedMah });
  }
  return [...records.values()];
}

/** Charge of a whole flight; null when the log only bounds it. */
function usedMah(entry: LogbookEntry | undefined): number | null {
  const charge = entry?.check.measures.chargeUsedMah;
  if (!charge || charge.value === null || charge.bound !== undefined) return null;
  return entry.check.complete ? charge.value : null;
}

function doubt({ putBackMah, loggedMah }: PutBack): string | null {
  if (loggedMah === null) return "its log does not hold the whole charge";
  const ratio = putBackMah / loggedMah;
  if (!(ratio >= BELIEVABLE_RATIO[0] && ratio <= BELIEVABLE_RATIO[1])) {
    return `the put-back of ${putBackMah} mAh does not fit ${loggedMah.toFixed(0)} mAh logged`;
  }
  return null;
}
