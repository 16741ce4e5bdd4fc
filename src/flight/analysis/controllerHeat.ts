import type { Facts } from "../../aircraft/facts.ts";
import { between, type Quantity, unknown } from "../../base/quantity/index.ts";
import { once } from "../../base/remembered/index.ts";
import type { Recording } from "../../log/recording/index.ts";
import { LEAST_RISE_C, LEAST_TIME_CONSTANTS } from "../../physics/index.ts";
import { channelOrWhy } from "./channelOrWhy.ts";
import { type HeatDrivers, heatDrivers } from "./controllerHeatDrivers.ts";
import { fitHeat, type HeatFit } from "./controllerHeatFit.ts";
import { type HeatPicture, heatPicture, lagAtPeak } from "./controllerHeatPicture.ts";
import { type HeatSamples, heatSamples } from "./controllerHeatSamples.ts";
import { isAtCeiling } from "./currentAtCeiling.ts";
import {
  DEAD_TEMPERATURE,
  HEAT_NOT_BOUNDED,
  HEAT_TOO_FEW_ROWS,
  heatTooShort,
  riseTooSmall,
} from "./identifiedSentences.ts";
import type { LagCorrection } from "./lagCorrection.ts";
import type { HeatDriver } from "./measures.ts";
import type { MotorLoad } from "./motorLoad.ts";
import type { SensorTiming } from "./packResistanceTiming.ts";
import type { RowRange } from "./segments.ts";
import { CURRENT_AT_CEILING } from "./sumSentences.ts";

/** Air of the day with one standard deviation, degC. */
export interface AirOfDay {
  readonly ambientC: number;
  readonly standardDeviationC: number;
}

export interface ControllerHeat {
  readonly timeConstantS: Quantity;
  /** Steady rise per square ampere of `driver`. */
  readonly risePerA2: Quantity & { readonly driver?: HeatDriver };
  /** What the fit takes for the air around the controller (probe's offset in it), degC. */
  readonly ambientC: number | null;
  /** Of the probe behind the controller, s. */
  readonly probeLagS: number | null;
  /** How far the probe reads low at the peak; null where nothing was fitted. */
  readonly peakLag: LagCorrection | null;
  /** Each driver's time constant (s), steady rise (K/A2) and scatter of the readings about it (degC). */
  readonly byDriver: readonly {
    readonly driver: HeatDriver;
    readonly timeConstantS: number;
    readonly risePerA2: number;
    readonly scatterC: number;
  }[];
  readonly picture: HeatPicture | null;
  /** What was fitted; null without current or a controller temperature that works. */
  readonly readings: HeatReadings | null;
}

export interface HeatReadings {
  readonly drivers: HeatDrivers;
  readonly samples: HeatSamples;
}

/** Relative half-width of a steady rise whose driver only stands in for the motor current. */
const STAND_IN_HALF_WIDTH = 0.1;
/** A fit whose squares exceed the best one's by this many variances of one independent reading is another story. */
const RIVAL_LIMIT = 4;
const RIVAL_MEMORY_S = 30;

/**
 * First-order heating of the controller: dT/dt = a D - (T - Ta) / tau, seen by a probe with a lag. D is the square
 * of the pack or the motor current; the one that leaves the smaller residual is reported, and a rival that fits
 * as well widens the interval. Without shaft speed both drivers stand for a motor current that lies between
 * them, so the interval spans both. `timing` is that of the current sensor where it was found.
 */
export function identifyControllerHeat(
  recording: Recording,
  range: RowRange,
  facts: Facts,
  air: AirOfDay | null,
  motorLoad: MotorLoad | null,
  timing: SensorTiming | null,
): ControllerHeat {
  const temperature = channelOrWhy(recording, "controllerTemperature");
  if (temperature.why !== null) return withoutHeat(temperature.why);
  const current = channelOrWhy(recording, "current");
  if (current.why !== null) return withoutHeat(current.why);
  if (isAtCeiling(recording, current.values, range)) return withoutHeat(CURRENT_AT_CEILING);
  const drivers = heatDrivers(current.values, range, motorLoad, timing);
  const samples = heatSamples(recording, range, temperature.values, drivers);
  const reason = unfit(samples);
  if (reason !== null) return withoutHeat(reason, { drivers, samples });
  const offsetC = facts.sensors.temperatureAccuracyC / 2;
  const prior = air && { ...air, standardDeviationC: Math.hypot(air.standardDeviationC, offsetC) };
  return chosen(samples, drivers, prior, facts);
}

function unfit({ temperatureC }: HeatSamples): string | null {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const value of temperatureC) {
    if (value < low) low = value;
    if (value > high) high = value;
  }
  if (low > high) return HEAT_TOO_FEW_ROWS;
  if (low === high) return DEAD_TEMPERATURE;
  return high - low < LEAST_RISE_C ? riseTooSmall(high - low, LEAST_RISE_C) : null;
}

interface Fitted {
  readonly driver: HeatDrivers[number];
  readonly fit: HeatFit;
}

function chosen(
  samples: HeatSamples,
  drivers: HeatDrivers,
  air: AirOfDay | null,
  facts: Facts,
): ControllerHeat {
  const fitted: Fitted[] = [];
  drivers.forEach((driver, k) => {
    const { stepS, temperatureC } = samples;
    const fit = fitHeat({ stepS, temperatureC, driver: samples.drivers[k]! }, air);
    if (fit !== null && fit.best.gain > 0) fitted.push({ driver, fit });
  });
  const sumOf = ({ fit }: Fitted) => fit.best.sumOfSquares;
  const best = fitted.reduce<Fitted | null>((a, b) => (a === null || sumOf(b) < sumOf(a) ? b : a), null);
  const readings = { drivers, samples };
  if (best === null) return withoutHeat(HEAT_TOO_FEW_ROWS, readings);
  const spanS = samples.temperatureC.length * samples.stepS;
  const tauS = best.fit.best.timeConstantS;
  if (spanS < LEAST_TIME_CONSTANTS * tauS) return withoutHeat(heatTooShort(spanS, tauS), readings);
  if (!best.fit.isBounded) return withoutHeat(HEAT_NOT_BOUNDED, readings);
  const rivalLimit = 1 + RIVAL_LIMIT / Math.max(1, spanS / RIVAL_MEMORY_S);
  const isGuess = fitted.some((one) => one.driver.name === "powerFourThirds");
  const isRival = (one: Fitted) => isGuess || sumOf(one) <= rivalLimit * sumOf(best);
  const rivals = fitted.filter((one) => one.fit.isBounded && isRival(one));
  const picture = once(() => heatPicture(samples, best.fit));
  return {
    timeConstantS: timeConstant(best, rivals),
    risePerA2: risePerA2(best, rivals, facts),
    ambientC: best.fit.best.ambientC,
    probeLagS: best.fit.best.lagS,
    peakLag: lagAtPeak(best.fit),
    byDriver: fitted.map(({ driver, fit }) => ({
      driver: driver.name,
      timeConstantS: fit.best.timeConstantS,
      risePerA2: fit.best.gain * fit.best.timeConstantS,
      scatterC: Math.sqrt(fit.best.sumOfSquares / fit.readings),
    })),
    get picture() {
      return picture();
    },
    readings,
  };
}

function timeConstant(best: Fitted, rivals: readonly Fitted[]): Quantity {
  const low = Math.min(...rivals.map((one) => one.fit.timeConstantS[0]));
  const high = Math.max(...rivals.map((one) => one.fit.timeConstantS[1]));
  return between(best.fit.best.timeConstantS, low, high, "s", "derived");
}

/** The gain of the current sensor enters squared. */
function risePerA2(best: Fitted, rivals: readonly Fitted[], facts: Facts): ControllerHeat["risePerA2"] {
  const rise = best.fit.best.gain * best.fit.best.timeConstantS;
  const low = Math.min(...rivals.map((one) => one.fit.steadyRise[0]));
  const high = Math.max(...rivals.map((one) => one.fit.steadyRise[1]));
  const scale = Math.hypot(
    (2 * facts.sensors.currentAccuracyPct) / 100,
    2 * best.driver.relativeHalfWidth,
    best.driver.name === "powerFourThirds" ? STAND_IN_HALF_WIDTH : 0,
  );
  const below = Math.hypot(rise - low, scale * rise);
  const above = Math.hypot(high - rise, scale * rise);
  const quantity = between(rise, rise - below, rise + above, "degC/A2", "derived");
  return quantity.value === null ? quantity : { ...quantity, driver: best.driver.name };
}

function withoutHeat(why: string, readings: HeatReadings | null = null): ControllerHeat {
  return {
    timeConstantS: unknown("s", why),
    risePerA2: unknown("degC/A2", why),
    ambientC: null,
    probeLagS: null,
    peakLag: null,
    byDriver: [],
    picture: null,
    readings,
  };
}
