import { unitText } from "../../../base/quantity/index.ts";
import { capital } from "../../../base/words/index.ts";
import {
  groupedPoints,
  isAlarmed,
  type SeasonPoint,
  shortFitting,
  trendUnit,
} from "../../../season/overview/index.ts";
import {
  seriesTitle,
  type TrendMeasure,
  type TrendResult,
  type TrendSeries,
  trendMeasureWords,
} from "../../../season/trends/index.ts";
import {
  type FlightSeries,
  html,
  type Markup,
  type PanelLimit,
  seriesMark,
  shortened,
  visibleText,
} from "../../charts/index.ts";
import { carried } from "../carried.ts";
import { limitWords } from "../sentences.ts";
import { changesList, fittingBreaks } from "./changes.ts";
import { figureText } from "./figureText.ts";
import { flightFigure, numberWithUnit } from "./flightFigure.ts";
import { pointTable } from "./pointTable.ts";
import type { FlightsContext } from "./seasonInput.ts";
import { pointAt } from "./seasonPoints.ts";
import {
  BREAK_KEY,
  groupedSentence,
  NO_TRENDS,
  SINGLE_KEY,
  seriesLead,
  slopeWords,
  TRENDS_TITLE,
  trendTableCaption,
} from "./sentences.ts";

/** Series that one small chart can hold and still tell apart. */
const MOST_SERIES = 4;
/** Characters of a label that fit into the right margin, and of a name in a table or sentence. */
const LONGEST_LABEL = 9;
const LONGEST_NAME = 40;
const STYLES = [1, 2, 3, 4] as const;

/** A series of a small chart with the points it is drawn with. */
interface DrawnSeries {
  readonly trend: TrendSeries;
  readonly words: string;
  readonly style: FlightSeries["style"];
  readonly points: readonly SeasonPoint[];
}

interface TrendsContext extends FlightsContext {
  readonly trends: TrendResult;
}

/** Every trend as a small chart with its verdict, those that show a change first. */
export function trendsSection(context: TrendsContext): Markup {
  const { trends, groupedBy } = context;
  const groups = chartGroups(trends.series.filter(({ points }) => points.length > 0));
  const key = `${groupedBy === 1 ? SINGLE_KEY : groupedSentence(groupedBy)} ${BREAK_KEY}`;
  const charts = groups.map((group, index) => trendChart(context, group, `trend-${index + 1}`));
  const body =
    groups.length === 0
      ? html`<p>${NO_TRENDS}</p>`
      : html`<p class="key">${key}</p><div class="small-charts">${charts}</div>`;
  return html`<section class="trends" aria-labelledby="trends"><h2 id="trends">${TRENDS_TITLE}</h2><p>${trends.text}</p>${changesList(context)}${body}</section>`;
}

/** Series of one measure together, at most four in a chart; measures with a change first. */
function chartGroups(series: readonly TrendSeries[]): readonly (readonly TrendSeries[])[] {
  const byMeasure = new Map<TrendMeasure, TrendSeries[]>();
  for (const one of series) byMeasure.set(one.measure, [...(byMeasure.get(one.measure) ?? []), one]);
  const groups = [...byMeasure.values()].flatMap((all) => {
    const count = Math.ceil(all.length / MOST_SERIES);
    return Array.from({ length: count }, (_, at) => all.slice(at * MOST_SERIES, (at + 1) * MOST_SERIES));
  });
  const weight = (group: readonly TrendSeries[]) => (group.some(isAlarmed) ? 0 : 1);
  return groups.sort((one, other) => weight(one) - weight(other));
}

function trendChart(context: FlightsContext, group: readonly TrendSeries[], id: string): Markup {
  const measure = group[0]?.measure ?? "packResistanceMohm";
  const title = capital(trendMeasureWords(measure));
  const unit = trendUnit(measure);
  const drawn = group.map((trend, at) => drawnSeries(context, trend, STYLES[at] ?? 1));
  const breaks = measure === "packResistanceMohm" ? [] : fittingBreaks(context);
  const series = drawn.map((one, at) => flightSeries(one, `${id}-${at + 1}`));
  const limits = drawn.flatMap(({ trend, words }) => crossingLimit(trend, words));
  const chart = { id, axis: context.axis, startsAtZero: false, series, limits, plans: [], breaks };
  const sentences = drawn.map(seriesSentence);
  const columns = drawn.map(({ words, points }) => ({ head: words, unit, points }));
  const table = pointTable(title, trendTableCaption(title, context.groupedBy), columns, context);
  return html`<div class="small-chart">${flightFigure({ chart, title, unit, sentences }, { hasAxis: true, hasBreakNames: context.changes.length > 0 })}${table}</div>`;
}

function drawnSeries(
  { byName, groupedBy }: FlightsContext,
  trend: TrendSeries,
  style: FlightSeries["style"],
): DrawnSeries {
  const single = trend.points.flatMap(({ flight, value, low, high }) => {
    const at = byName.get(flight);
    return at === undefined ? [] : [pointAt(at, value, low, high)];
  });
  const words = shortened(visibleText(shortFitting(trend.of)), LONGEST_NAME).short;
  return { trend, words, style, points: groupedPoints(single, groupedBy) };
}

/** The value that a rising series truly heads for. */
function crossingLimit({ crossing, measure }: TrendSeries, source: string): readonly PanelLimit[] {
  if (crossing === null) return [];
  const value = crossing.limitValue;
  const words = limitWords(numberWithUnit(value, trendUnit(measure)));
  return [{ value, words, source, forbidden: "above" }];
}

function flightSeries({ words, points, style }: DrawnSeries, id: string): FlightSeries {
  return { id, words: shortened(words, LONGEST_LABEL).short, style, points };
}

/** "Pack A: rising by about …", and the slope where it has an interval. */
function seriesSentence({ trend, words, style }: DrawnSeries): Markup {
  const { slopePerFlight: slope, text, measure, of } = trend;
  const title = `${seriesTitle(measure, of)}: `;
  const said = text.startsWith(title) ? text.slice(title.length) : text;
  const per = measure === "packResistanceMohm" ? "charge" : "flight";
  const hasInterval = slope.value !== null && slope.low !== null && slope.high !== null;
  const pace = hasInterval ? slopeWords(figureText(slope), unitText(trendUnit(measure)), per) : "";
  return html`${seriesMark(style)}<b>${seriesLead(capital(words), isAlarmed(trend))}</b> ${said} <span${carried(measure, slope)}>${pace}</span>`;
}
