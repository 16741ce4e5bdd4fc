import { isKnown, known, type Quantity, unknown } from "../../base/quantity/index.ts";
import { type AmbientOfDay, ambientOfDay } from "./ambientOfDay.ts";
import { workingChannel } from "./channelOrWhy.ts";
import {
  fullThrottleSettlesC,
  fullThrottleUntilLimitS,
  type StartingAir,
} from "./controllerHeatFullThrottle.ts";
import type { FlightContext } from "./flightContext.ts";
import type { Identified } from "./identifiedMeasures.ts";
import type { Measures } from "./measures.ts";
import { AMBIENT_FROM_CONTROLLER } from "./sentences.ts";

/** Seconds since the first row and a value at each. */
export interface TimeCurve {
  readonly x: Float64Array;
  readonly y: Float64Array;
}

/** What a section on the controller's heat shows beside the measures; degC. */
export interface HeatView {
  /** The logged readings, thinned to the lowest and highest of each span; null without the channel. */
  readonly measured: TimeCurve | null;
  /** As the fit has the probe show it; null where nothing was fitted. */
  readonly modelled: TimeCurve | null;
  /** The logged readings moved so that the highest is the peak on the hot day; null where that is not known. */
  readonly hotDay: TimeCurve | null;
  readonly hotDayC: number;
  /** Air of the day; its remark says where it is from. */
  readonly airC: Quantity;
  /** What the fit takes for the air around the controller. */
  readonly fittedAirC: number | null;
  readonly probeLagS: number | null;
  /** Current of the static run, A, that the next four rest on. */
  readonly fullThrottleA: number | null;
  readonly today: FullThrottleHeat;
  readonly onHotDay: FullThrottleHeat;
}

/** Full throttle held from the temperature of the air on. */
export interface FullThrottleHeat {
  readonly settlesC: Quantity;
  readonly untilLimitS: Quantity;
}

const SPANS = 180;

export function heatView(context: FlightContext, { parts }: Identified, measures: Measures): HeatView {
  const { heat } = parts;
  const { facts } = context;
  const airOfDay = ambientOfDay(context);
  const measured = measuredCurve(context);
  const fullThrottleA = fullThrottleOf(measures.staticCurrentA, heat.risePerA2.driver, context);
  const held = (air: StartingAir): FullThrottleHeat => ({
    settlesC: fullThrottleSettlesC(heat, fullThrottleA, air),
    untilLimitS: fullThrottleUntilLimitS(heat, fullThrottleA, facts.controller.limitC, air),
  });
  const halfWidthC =
    airOfDay.ambientC === null ? facts.sensors.temperatureAccuracyC : 2 * airOfDay.standardDeviationC;
  const todayC = airOfDay.ambientC ?? heat.ambientC ?? Number.NaN;
  return {
    measured,
    modelled: heat.picture === null ? null : curveOf(heat.picture.modelled),
    hotDay: hotDayCurve(measured, measures),
    hotDayC: facts.field.hotDayC,
    airC: airQuantity(airOfDay),
    fittedAirC: heat.ambientC,
    probeLagS: heat.probeLagS,
    fullThrottleA,
    today: held({ ambientC: todayC, halfWidthC }),
    onHotDay: held({ ambientC: facts.field.hotDayC, halfWidthC: facts.sensors.temperatureAccuracyC }),
  };
}

/** Air that nobody stated or logged is estimated from the controller's first reading. */
function airQuantity(air: AmbientOfDay): Quantity {
  if (air.ambientC === null) return unknown("degC", air.why);
  const basis = air.source === AMBIENT_FROM_CONTROLLER ? "estimated" : "measured";
  return known(air.ambientC, 2 * air.standardDeviationC, "degC", basis, { why: air.source });
}

/** The driver of one motor is its own share of the current. */
function fullThrottleOf(
  staticCurrentA: Quantity,
  driver: string | undefined,
  { facts }: FlightContext,
): number | null {
  if (!isKnown(staticCurrentA)) return null;
  return driver === "motorCurrent" ? staticCurrentA.value / facts.motor.count : staticCurrentA.value;
}

function curveOf(points: readonly (readonly [number, number])[]): TimeCurve {
  return {
    x: Float64Array.from(points, ([at]) => at),
    y: Float64Array.from(points, ([, value]) => value),
  };
}

/** Lowest and highest reading of each of equal spans of rows, in order. */
function measuredCurve({ recording, rows }: FlightContext): TimeCurve | null {
  const values = workingChannel(recording, "controllerTemperature");
  if (values === null) return null;
  const perSpan = (rows.lastRow - rows.firstRow + 1) / SPANS;
  const kept = new Set<number>();
  for (let span = 0; span < SPANS; span++) {
    const first = rows.firstRow + Math.floor(span * perSpan);
    const end = rows.firstRow + Math.floor((span + 1) * perSpan);
    for (const row of extremesOf(values, first, end)) kept.add(row);
  }
  if (kept.size === 0) return null;
  return curveOf([...kept].map((row) => [recording.timeS[row]!, values[row]!] as const));
}

function extremesOf(values: Float64Array, first: number, end: number): readonly number[] {
  let low = -1;
  let high = -1;
  for (let row = first; row < end; row++) {
    if (Number.isNaN(values[row]!)) continue;
    if (low < 0 || values[row]! < values[low]!) low = row;
    if (high < 0 || values[row]! > values[high]!) high = row;
  }
  return low < 0 ? [] : [Math.min(low, high), Math.max(low, high)];
}

function hotDayCurve(
  measured: TimeCurve | null,
  { controllerPeakC, controllerHotDayPeakC }: Measures,
): TimeCurve | null {
  if (measured === null || !isKnown(controllerPeakC) || !isKnown(controllerHotDayPeakC)) return null;
  const warmerC = controllerHotDayPeakC.value - controllerPeakC.value;
  return { x: measured.x, y: measured.y.map((value) => value + warmerC) };
}
