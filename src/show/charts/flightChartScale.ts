import { axisSpan, type FlightChart, type FlightSeries, middlePlace } from "./flightChart.ts";
import type { Panel, PanelSeries } from "./panel.ts";
import { limitsOffScale } from "./panelScale.ts";
import { type ValueScale, valueScale } from "./valueScale.ts";

/** Interval ends may widen the axis by this many times the reach of the values; beyond that they are cut. */
const FARTHEST_END = 0.8;
/** Reach of a series whose values are all equal, as a share of the value. */
const FLAT_REACH = 0.1;

/** The same chart as a panel, so that walls, end labels and lines are drawn as in the flight report. */
export function asPanel(chart: FlightChart): Panel {
  return {
    id: chart.id,
    title: "",
    unit: "",
    decimals: 0,
    ...axisSpan(chart.axis),
    startsAtZero: chart.startsAtZero,
    series: chart.series.map(asPanelSeries),
    limits: chart.limits,
    marks: [],
    phases: [],
    gaps: [],
  };
}

function asPanelSeries({ id, words, style, points }: FlightSeries): PanelSeries {
  const x = points.map(middlePlace);
  const y = points.map(({ value }) => value);
  return { id, words, style, trace: { x, y, first: 0, last: points.length - 1, gaps: [] } };
}

/** Value axis over the points, their intervals as far as they are of use, and the limits near enough to draw. */
export function flightScale(chart: FlightChart): ValueScale {
  const points = chart.series.flatMap((series) => series.points);
  if (points.length === 0) return valueScale(0, 1, true);
  const values = points.map(({ value }) => value);
  const [lowest, highest] = [least(values), most(values)];
  const reach = FARTHEST_END * (highest - lowest || Math.abs(highest) * FLAT_REACH);
  const ends = points.flatMap(({ low, high }) => [low ?? lowest, high ?? highest]);
  const panel = asPanel(chart);
  const off = limitsOffScale(panel);
  const walls = chart.limits.filter((limit) => !off.includes(limit));
  const near = [...walls, ...chart.plans].map(({ value }) => value);
  const low = Math.max(least(ends), lowest - reach);
  const high = Math.min(most(ends), highest + reach);
  return valueScale(least([low, lowest, ...near]), most([high, highest, ...near]), chart.startsAtZero);
}

function least(values: readonly number[]): number {
  return values.reduce((found, value) => Math.min(found, value), Number.POSITIVE_INFINITY);
}

function most(values: readonly number[]): number {
  return values.reduce((found, value) => Math.max(found, value), Number.NEGATIVE_INFINITY);
}

/** Limits of a chart that its axis does not reach. */
export function flightLimitsOffScale(chart: FlightChart): FlightChart["limits"] {
  return limitsOffScale(asPanel(chart));
}
