import type { Facts } from "../../aircraft/facts.ts";
import type { BriefFlight, CurrentCalibration } from "../logbook/index.ts";
import { chargeConditions } from "./chargeConditions.ts";
import { type ChargeLimit, COVERAGE, chargeLimit } from "./chargeLimit.ts";
import { countedFlights, loadOf } from "./countedFlights.ts";
import { explainCharge } from "./explainCharge.ts";
import { type ChargeConditions, FLIGHTS_FOR_FULL_TIMER, type LoggedLoad } from "./loggedLoad.ts";
import { longestApproachS } from "./longestApproach.ts";
import type { NextFlight } from "./nextFlight.ts";
import { oneMoreFlightS } from "./oneMoreFlight.ts";
import { otherLimits } from "./otherLimits.ts";
import {
  bindingWords,
  limitTooSoon,
  noCapacity,
  noCountedFlight,
  packTooSmall,
  timerSentence,
} from "./sentences.ts";
import type { TimerLimit, TimerSetting } from "./timerSetting.ts";

const ROUND_DOWN_TO_S = 10;

/**
 * The timer of the next flight from the flights of the book: the smallest of the touchdowns that charge,
 * loaded voltage and controller temperature allow, less the longest approach, rounded down to 10 s.
 * Without enough to go on `timerS` is null and `why` says what is missing.
 */
export function setTimer(
  entries: readonly BriefFlight[],
  fitted: Facts,
  next: NextFlight,
  calibration: CurrentCalibration | null,
): TimerSetting {
  const { counted, leftOut } = countedFlights(entries, fitted);
  const gain = calibration?.isApplied ? calibration.gain : 1;
  const loads = counted.flatMap((entry) => loadOf(entry, gain) ?? []);
  const frame = {
    format: "tallywatt/timer",
    version: 1,
    aircraft: fitted.name ?? "",
    pack: next.pack,
    flights: loads.length,
    ambientC: next.ambientC ?? fitted.field.hotDayC,
    isHotDay: next.ambientC === null,
    coverage: COVERAGE,
    reservePct: next.reservePct,
    leftOut,
  } as const;
  const conditions = chargeConditions(fitted, next, calibration);
  if (conditions === null) return refused(frame, noCapacity());
  if (loads.length === 0) return refused(frame, noCountedFlight(entries.length));
  const charge = chargeLimit(loads, conditions);
  const limits: readonly TimerLimit[] = [
    chargeLimitOf(charge, loads),
    ...otherLimits({ counted, charge, conditions, fitted, next }),
  ];
  return settingOf(frame, loads, conditions, charge, limits);
}

/** Below nought there is no time to state: the charge does not last the take-off. */
function chargeLimitOf({ touchdownByS }: ChargeLimit, loads: readonly LoggedLoad[]): TimerLimit {
  const hungriest = loads.reduce((most, one) => (one.rateMahPerS > most.rateMahPerS ? one : most));
  const flights = [hungriest.flight];
  if (touchdownByS < 0) return { by: "charge", touchdownByS: 0, why: packTooSmall(), flights };
  return { by: "charge", touchdownByS: Math.floor(touchdownByS), flights };
}

type Frame = Omit<
  TimerSetting,
  | "timerS"
  | "touchdownByS"
  | "cautiousTimerS"
  | "binding"
  | "limits"
  | "provisional"
  | "explained"
  | "oneMoreFlightS"
  | "text"
>;

function settingOf(
  frame: Frame,
  loads: readonly LoggedLoad[],
  conditions: ChargeConditions,
  charge: ChargeLimit,
  limits: readonly TimerLimit[],
): TimerSetting {
  const binding = limits.reduce((least, one) => (secondsOf(one) < secondsOf(least) ? one : least));
  const approachS = longestApproachS(loads);
  const timerS = roundDown(secondsOf(binding) - approachS);
  if (timerS <= 0) {
    const why =
      binding.by === "charge"
        ? packTooSmall()
        : limitTooSoon(bindingWords(binding.by), secondsOf(binding), approachS);
    return { ...refused(frame, why), limits };
  }
  const cautious = Math.min(secondsOf(binding), charge.cautiousTouchdownByS);
  const touchdownByS = timerS + approachS;
  const provisional = loads.length < FLIGHTS_FOR_FULL_TIMER;
  const words = { timerS, touchdownByS, binding: binding.by, reservePct: frame.reservePct };
  return {
    ...frame,
    timerS,
    touchdownByS,
    cautiousTimerS: Math.max(0, roundDown(cautious - approachS)),
    binding: binding.by,
    limits,
    provisional,
    explained: explainCharge(charge, conditions, approachS),
    oneMoreFlightS: binding.by === "charge" ? oneMoreFlightS(loads, conditions, charge) : null,
    text: timerSentence({ ...words, flights: loads.length, isProvisional: provisional }),
  };
}

function refused(frame: Frame, why: string): TimerSetting {
  return {
    ...frame,
    timerS: null,
    touchdownByS: null,
    cautiousTimerS: null,
    binding: null,
    limits: [],
    provisional: true,
    explained: [],
    oneMoreFlightS: null,
    why,
    text: `No timer: ${why}.`,
  };
}

function secondsOf(limit: TimerLimit): number {
  return limit.touchdownByS ?? Number.POSITIVE_INFINITY;
}

function roundDown(seconds: number): number {
  return Math.floor(seconds / ROUND_DOWN_TO_S) * ROUND_DOWN_TO_S;
}
