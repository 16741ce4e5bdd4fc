import {
  mean,
  normalQuantile,
  oneSidedPredictionFactor,
  oneSidedToleranceFactor,
  pooledSpread,
  type Spread,
  sampleStandardDeviation,
} from "../../base/statistics/index.ts";
import { type ChargeConditions, GO_AROUND_S, type LoggedLoad } from "./loggedLoad.ts";

/** What is assumed of a pilot's spread from flight to flight before any is known: relative, and its worth. */
const PRIOR_SPREAD = 0.15;
const PRIOR_WORTH_FLIGHTS = 3;
/** The cautious bound must hold for each pilot, not on average: it assumes a less even one. */
const CAUTIOUS_SPREAD = 0.2;
/** From so many flights on the cautious bound rests on their own spread where that asks for more. */
const FLIGHTS_FOR_OWN_SPREAD = 6;
/** More than is promised: the climb scatters too. */
const OWN_CONFIDENCE = 0.96;
/** The factor on the flights' own spread is larger than on the pooled one by less than this. */
const MOST_LARGER = 1.3;
/** Share of flights that the timer promises to land with the reserve. */
export const COVERAGE = 0.95;

/** How far a flight of the counted kind may be flown on the charge, and each part of the sum. */
export interface ChargeLimit {
  /** Touchdown by, s from take-off, not rounded; may be negative when the pack is too small. */
  readonly touchdownByS: number;
  /** The same by the cautious bound (tolerance instead of prediction). */
  readonly cautiousTouchdownByS: number;
  readonly usableMah: number;
  readonly groundMah: number;
  readonly goAroundMah: number;
  readonly climbMah: number;
  readonly climbS: number;
  /** Typical rate after the climb and the rate that 19 of 20 next flights stay below, mAh per second. */
  readonly meanRateMahPerS: number;
  readonly boundRateMahPerS: number;
}

/**
 * The touchdown at which the charge down to the reserve and one go-around is used in a flight whose rate
 * lies at the one-sided 95 % bound. Charge of a flight of length T: take-off and climb + rate (T - climb).
 * @param loads counted flights, 1 or more
 */
export function chargeLimit(loads: readonly LoggedLoad[], conditions: ChargeConditions): ChargeLimit {
  const rates = loads.map((load) => Math.log(load.rateMahPerS));
  const climbMah = mean(loads.map((load) => load.climbChargeMah));
  const climbS = mean(loads.map((load) => load.climbS));
  const groundMah = Math.max(...loads.map((load) => load.groundChargeMah));
  const goAroundMah = (GO_AROUND_S * climbMah) / climbS;
  const capacity = conditions.capacityMah * conditions.health;
  const usableMah = capacity * (conditions.startShare - conditions.reserveShare) - groundMah - goAroundMah;
  const meanRate = mean(rates);
  const bounds = rateBounds(rates, conditions.gainStandardDeviation);
  const lengthAt = (rate: number): number => climbS + (usableMah - climbMah) / rate;
  return {
    touchdownByS: lengthAt(Math.exp(meanRate + bounds.prediction)),
    cautiousTouchdownByS: lengthAt(Math.exp(meanRate + bounds.tolerance)),
    usableMah,
    groundMah,
    goAroundMah,
    climbMah,
    climbS,
    meanRateMahPerS: Math.exp(meanRate),
    boundRateMahPerS: Math.exp(meanRate + bounds.prediction),
  };
}

/** How far above the mean the bounds on the next log rate lie. The sensor's gain is common to all flights. */
function rateBounds(
  logRates: readonly number[],
  gainStandardDeviation: number,
): { readonly prediction: number; readonly tolerance: number } {
  const count = logRates.length;
  const own = count > 1 ? sampleStandardDeviation(logRates) : 0;
  const pooledWith = (prior: number) =>
    pooledSpread(
      { standardDeviation: own, degreesOfFreedom: count - 1 },
      { standardDeviation: prior, degreesOfFreedom: PRIOR_WORTH_FLIGHTS },
    );
  const usual = pooledWith(PRIOR_SPREAD);
  const prediction =
    oneSidedPredictionFactor(count, COVERAGE, usual.degreesOfFreedom) * usual.standardDeviation;
  const tolerance = cautiousTolerance(count, own, pooledWith(CAUTIOUS_SPREAD));
  const gain = normalQuantile(COVERAGE) * gainStandardDeviation;
  return { prediction: Math.hypot(prediction, gain), tolerance: Math.hypot(tolerance, gain) };
}

/** What is assumed of a pilot draws the spread of an uneven one down: many flights speak for themselves. */
function cautiousTolerance(count: number, own: number, pooled: Spread): number {
  const factor = oneSidedToleranceFactor(count, COVERAGE, COVERAGE, pooled.degreesOfFreedom);
  const assumed = factor * pooled.standardDeviation;
  const isOwnLess = MOST_LARGER * own < pooled.standardDeviation;
  if (count < FLIGHTS_FOR_OWN_SPREAD || isOwnLess) return assumed;
  return Math.max(assumed, oneSidedToleranceFactor(count, COVERAGE, OWN_CONFIDENCE, count - 1) * own);
}
