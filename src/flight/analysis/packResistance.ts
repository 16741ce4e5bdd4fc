import type { Facts, SensorFacts } from "../../aircraft/facts.ts";
import { known, type Quantity, unknown } from "../../base/quantity/index.ts";
import { once } from "../../base/remembered/index.ts";
import type { Recording } from "../../log/recording/index.ts";
import { channelOrWhy } from "./channelOrWhy.ts";
import { isAtCeiling } from "./currentAtCeiling.ts";
import {
  LOAD_HARDLY_CHANGED,
  TOO_FEW_ROWS,
  tooFewSteps,
  tooShortRun,
  VOLTS_TOO_LOOSE,
} from "./identifiedSentences.ts";
import { type LoadFilters, loadFilters } from "./packResistanceFilter.ts";
import { fitPack, type PackFit } from "./packResistanceFit.ts";
import { type PackPicture, packPicture } from "./packResistancePicture.ts";
import { type LoadSamples, loadSamples } from "./packResistanceSamples.ts";
import { shiftedCurrent } from "./packResistanceShift.ts";
import { type StepResistance, stepResistance } from "./packResistanceSteps.ts";
import { type SensorTiming, sensorTiming } from "./packResistanceTiming.ts";
import type { RowRange } from "./segments.ts";
import { CURRENT_AT_CEILING } from "./sumSentences.ts";

export interface PackResistance {
  /** Volts lost per ampere one second after a step, mohm. */
  readonly after1S: Quantity;
  /** The same ten seconds after it: what loaded-voltage predictions use, mohm. */
  readonly after10S: Quantity;
  /** The cross-check from changes over one second alone, mohm; null where there are none. */
  readonly byStepsMohm: number | null;
  /** `after1S` minus `byStepsMohm`. */
  readonly differenceMohm: number | null;
  /** By how much the current is reported late, and through which filter, seconds. Null where nothing was fitted. */
  readonly timing: SensorTiming | null;
  /** Volts at no load at the share of this range's charge drawn, 0 to 1. Null where nothing was fitted. */
  readonly openCircuitV: ((chargeShare: number) => number) | null;
  readonly picture: PackPicture | null;
}

const LEAST_ROWS = 20;
const LEAST_STEPS = 3;
const LEAST_RUNNING_S = 10;
/** Above this share of the peak the motor counts as running here, and never below this many amps. */
const RUNNING_SHARE = 0.1;
const RUNNING_A = 1;
/** Block errors to a 95 % half-width: Student t at 11 degrees of freedom. */
const T_OF_BLOCKS = 2.2;
/** Shares of the differences to the step estimates that are added as uncertainty of the model. */
const SHARE_OF_MATCHED_STEPS = 0.8;
const SHARE_OF_PLAIN_STEPS = 0.3;
/** Share of what the belief in a filter moves: a quick part of the pack can pass for one. */
const SHARE_OF_FILTER_DIFFERENCE = 0.4;
/** Relative half-width that the shape of the model is never trusted beyond (seen over simulated packs). */
const LEAST_DOUBT = 0.02;
/** Standard deviation over the sensor filters tried to a half-width. */
const SPREADS = 1.8;
const MOHM = 1000;

/**
 * Effective direct-current resistance of the pack with its leads up to the sensor, from the whole log.
 * The time of the current sensor against the voltage sensor is found first; the difference to plain steps
 * enters the interval. (The laboratory procedure is the two-load step of IEC 61960-3.)
 */
export function identifyPackResistance(recording: Recording, range: RowRange, facts: Facts): PackResistance {
  for (const channel of ["current", "packVoltage"] as const) {
    const { why } = channelOrWhy(recording, channel);
    if (why !== null) return withoutResistance(why);
  }
  if (isAtCeiling(recording, recording.channels.get("current")!, range)) {
    return withoutResistance(CURRENT_AT_CEILING);
  }
  const samples = loadSamples(recording, range);
  if (samples === null || samples.timeS.length < LEAST_ROWS) return withoutResistance(TOO_FEW_ROWS);
  const runningS = runningTimeS(samples);
  const raw = stepResistance(samples, samples.currentA);
  if (runningS < LEAST_RUNNING_S) {
    return withoutResistance(tooShortRun(runningS, LEAST_RUNNING_S));
  }
  if (raw.steps < LEAST_STEPS) {
    return withoutResistance(tooFewSteps(raw.steps, LEAST_STEPS));
  }
  return fitted(samples, facts.sensors);
}

function fitted(samples: LoadSamples, sensors: SensorFacts): PackResistance {
  const filters = loadFilters(samples);
  const timing = sensorTiming(samples, filters);
  if (timing === null) return withoutResistance(LOAD_HARDLY_CHANGED);
  const currentA = shiftedCurrent(samples, timing.shiftS);
  const matched = { ...samples, packV: matchedVolts(samples, timing, filters) };
  const fit = fitPack(matched, currentA, filters);
  if (fit === null) return withoutResistance(LOAD_HARDLY_CHANGED);
  const steps = stepResistance(samples, shiftedCurrent(samples, timing.plainShiftS));
  const picture = once(() => packPicture(matched, currentA, fit));
  const doubt = modelDoubtOhm(fit, timing, steps, stepResistance(matched, currentA));
  const after1S = resistance(fit, timing, doubt, sensors, 1);
  return {
    after1S,
    after10S: resistance(fit, timing, doubt, sensors, 10),
    byStepsMohm: Number.isFinite(steps.ohm) ? MOHM * steps.ohm : null,
    differenceMohm:
      after1S.value === null || !Number.isFinite(steps.ohm) ? null : after1S.value - MOHM * steps.ohm,
    timing,
    openCircuitV: fit.openCircuitV,
    get picture() {
      return picture();
    },
  };
}

function matchedVolts({ packV }: LoadSamples, { filterS }: SensorTiming, filters: LoadFilters): Float64Array {
  return filterS > 0 ? filters(filterS)(packV) : packV;
}

/**
 * Half-width in ohm for what the model leaves open: the filter of the sensor (which a quick part of the pack
 * can imitate), and differences of one second, plain and with the volts matched to that filter.
 */
function modelDoubtOhm(
  fit: PackFit,
  timing: SensorTiming,
  plain: StepResistance,
  matched: StepResistance,
): number {
  const atBest = fit.resistanceOhm(1);
  const afterOneS = atBest * timing.meanOverBest;
  return Math.hypot(
    LEAST_DOUBT * afterOneS,
    SPREADS * timing.spreadOverBest * atBest,
    SHARE_OF_FILTER_DIFFERENCE * (timing.plainOverBest - timing.meanOverBest) * atBest,
    SHARE_OF_MATCHED_STEPS * (afterOneS - matched.ohm),
    SHARE_OF_PLAIN_STEPS * (afterOneS - plain.ohm),
  );
}

/** The resistance `seconds` after a step; what the timing leaves open after one second is added to both. */
function resistance(
  fit: PackFit,
  timing: SensorTiming,
  doubtOhm: number,
  sensors: SensorFacts,
  seconds: number,
): Quantity {
  const ohm = fit.resistanceOhm(seconds) * (seconds === 1 ? timing.meanOverBest : 1);
  const gain = Math.hypot(sensors.currentAccuracyPct, sensors.voltageAccuracyPct) / 100;
  const halfWidth = Math.hypot(T_OF_BLOCKS * fit.standardErrorOhm(seconds), gain * ohm, doubtOhm);
  if (!(ohm > halfWidth)) return unknown("mohm", VOLTS_TOO_LOOSE);
  return known(MOHM * ohm, MOHM * halfWidth, "mohm", "derived");
}

function runningTimeS(samples: LoadSamples): number {
  const { timeS, currentA, holeS } = samples;
  let peak = 0;
  for (let i = 0; i < currentA.length; i++) if (currentA[i]! > peak) peak = currentA[i]!;
  const limit = Math.max(RUNNING_A, RUNNING_SHARE * peak);
  let sum = 0;
  for (let i = 1; i < timeS.length; i++) {
    const dt = timeS[i]! - timeS[i - 1]!;
    if (dt <= holeS && currentA[i]! > limit && currentA[i - 1]! > limit) sum += dt;
  }
  return sum;
}

function withoutResistance(why: string): PackResistance {
  return {
    after1S: unknown("mohm", why),
    after10S: unknown("mohm", why),
    byStepsMohm: null,
    differenceMohm: null,
    timing: null,
    openCircuitV: null,
    picture: null,
  };
}
