import {
  mean,
  pooledSpread,
  sampleStandardDeviation,
  studentTQuantile,
} from "../../base/statistics/index.ts";
import { isCurrentEstimated } from "../../flight/analysis/measures.ts";
import type { CurrentCalibration } from "./currentCalibration.ts";
import type { BriefFlight } from "./entry.ts";
import { bookSentences } from "./sentences.ts";

/** Spread of put-back over logged charge from one charge to the next (common practice, no published source). */
const PRIOR_SPREAD = 0.02;
const PRIOR_WORTH = 3;
/** Two standard deviations of a hobby charger's own mAh reading (common practice, no published source). */
const CHARGER_ACCURACY = 0.02;
/** A single charge can be ended early or late: fewer than this many calibrate nothing. */
export const LEAST_PUT_BACKS = 2;
/** Outside this a put-back belongs to another flight or pack. */
const BELIEVABLE_RATIO = [0.6, 1.6] as const;

/** A half-width beyond this (of the logarithm) says that put-backs and flights do not belong together. */
const WIDEST = 0.12;

/** A charger reading and the logged charge it put back; `why` when it cannot be used. */
interface PutBack {
  readonly flights: readonly string[];
  readonly putBackMah: number;
  readonly loggedMah: number;
  readonly why: string | null;
}

/**
 * Gain of the current sensor from put-backs over flights with the same sensor: the mean log ratio with a
 * Student t interval on a spread pooled with a prior, and the charger's own accuracy in quadrature. It is
 * the gain of the latest flight's sensor scale; flights with another scale are left out.
 * Null with fewer than two usable put-backs.
 */
export function calibrateCurrent(entries: readonly BriefFlight[]): CurrentCalibration | null {
  const all = putBacksOf(entries);
  const leftOut = leftOutOf(all);
  const ratios = all
    .filter(({ why }) => why === null)
    .map(({ putBackMah, loggedMah }) => Math.log(putBackMah / loggedMah));
  if (ratios.length < LEAST_PUT_BACKS) return null;
  const halfWidth = halfWidthOf(ratios);
  const center = mean(ratios);
  const [low, high] = [Math.exp(center - halfWidth), Math.exp(center + halfWidth)];
  const isScattered = halfWidth > WIDEST;
  const isApplied = !isScattered && (low > 1 || high < 1);
  return { gain: Math.exp(center), low, high, putBacks: ratios.length, isApplied, isScattered, leftOut };
}

/** Flights whose put-back cannot be used, and why, also where too few are left to calibrate anything. */
export function putBacksLeftOut(entries: readonly BriefFlight[]): CurrentCalibration["leftOut"] {
  return leftOutOf(putBacksOf(entries));
}

function leftOutOf(putBacks: readonly PutBack[]): CurrentCalibration["leftOut"] {
  return putBacks.flatMap(({ flights, why }) =>
    why === null ? [] : flights.map((flight) => ({ flight, why })),
  );
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
function putBacksOf(entries: readonly BriefFlight[]): readonly PutBack[] {
  const byName = new Map(entries.map((entry) => [entry.flight, entry]));
  const scaleNow = entries.at(-1)?.facts.sensors.currentScale ?? 1;
  const records = new Map<string, PutBack>();
  for (const { flight, given } of entries) {
    const { putBackMah, putBackFlights } = given;
    if (putBackMah === null) continue;
    const flights = putBackFlights.length > 0 ? [...putBackFlights].sort() : [flight];
    records.set(flights.join("|"), { flights, putBackMah, ...logged(flights, byName, putBackMah, scaleNow) });
  }
  return [...records.values()];
}

/** What the flights of one charge logged together, or why that says nothing of the sensor. */
function logged(
  flights: readonly string[],
  byName: ReadonlyMap<string, BriefFlight>,
  putBackMah: number,
  scaleNow: number,
): Pick<PutBack, "loggedMah" | "why"> {
  let loggedMah = 0;
  for (const flight of flights) {
    const entry = byName.get(flight);
    const why = entry === undefined ? bookSentences.putBackFlightMissing(flight) : doubt(entry, scaleNow);
    if (why !== null) return { loggedMah: Number.NaN, why };
    loggedMah += entry?.check.measures.chargeUsedMah.value ?? Number.NaN;
  }
  const ratio = putBackMah / loggedMah;
  const isBelievable = ratio >= BELIEVABLE_RATIO[0] && ratio <= BELIEVABLE_RATIO[1];
  return { loggedMah, why: isBelievable ? null : bookSentences.putBackMisfit(putBackMah, loggedMah) };
}

/** Why the flight's charge cannot be held against the charger; null when it can. */
function doubt({ check, given, facts }: BriefFlight, scaleNow: number): string | null {
  const charge = check.measures.chargeUsedMah;
  if (isCurrentEstimated(check.measures)) return bookSentences.chargeEstimated();
  const isWhole = charge.value !== null && charge.bound === undefined && check.complete;
  if (!isWhole) return bookSentences.chargeNotWhole();
  if (given.startPct !== null && given.startPct < 100) return bookSentences.startNotFull();
  const { currentScale } = facts.sensors;
  return currentScale === scaleNow ? null : bookSentences.otherScale(currentScale, scaleNow);
}
