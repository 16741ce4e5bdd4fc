import { toPlace } from "../../base/quantity/index.ts";
import { endLabels } from "./endLabels.ts";
import { type FlightAxis, type FlightChart, type FlightSeries, middlePlace } from "./flightChart.ts";
import { asPanel, flightScale } from "./flightChartScale.ts";
import { linePath } from "./linePath.ts";
import { html, joined, type Markup, NOTHING, trusted } from "./markup/markup.ts";
import { box, limits } from "./panelOverlays.ts";
import { Placing } from "./placing.ts";
import { anchorAt, percentText } from "./position.ts";
import { spreadLabels } from "./spreadLabels.ts";
import type { ValueScale } from "./valueScale.ts";

/** The drawn parts of a chart over flights; the report lays them out side by side. */
export interface FlightDrawing {
  readonly breakNames: Markup;
  readonly valueAxis: Markup;
  readonly plot: Markup;
  readonly ends: Markup;
  readonly flightAxis: Markup;
  readonly scale: ValueScale;
}

/** From so many flights on a marker is smaller than 4 px either way. */
const HALF_PX = [
  { from: 100, half: 2 },
  { from: 40, half: 3 },
] as const;
const WIDEST_HALF_PX = 4;
const MOST_BREAK_NAMES = 3;
const NAME_PERCENT = 30;
const COLUMNS = 1000;

/** Draws a chart. `nameId` and `descriptionId` are the elements that say what the picture shows. */
export function flightDrawing(
  chart: FlightChart,
  names: { readonly nameId: string; readonly descriptionId: string },
): FlightDrawing {
  const panel = asPanel(chart);
  const scale = flightScale(chart);
  const place = new Placing(panel, scale);
  const isNamed = chart.series.some(({ words }) => words !== "");
  const layers = [
    grid(place, chart.axis),
    breaks(place, chart),
    limits(place),
    plans(place, chart),
    joins(place),
    points(place, chart),
  ];
  return {
    scale,
    breakNames: html`<svg class="break-names" aria-hidden="true" focusable="false">${breakNames(place, chart)}</svg>`,
    valueAxis: valueAxis(place),
    plot: html`<svg class="plot" role="img" aria-labelledby="${names.nameId}" aria-describedby="${names.descriptionId}" focusable="false">${layers}</svg>`,
    ends: html`<svg class="ends" aria-hidden="true" focusable="false">${isNamed ? endLabels(panel, scale) : NOTHING}</svg>`,
    flightAxis: flightAxis(place, chart.axis),
  };
}

function grid(place: Placing, axis: FlightAxis): Markup {
  const across = place.scale.ticks.map(
    (tick) =>
      html`<line class="grid${tick === 0 ? " zero" : ""}" x1="0" x2="100%" y1="${place.y(tick)}" y2="${place.y(tick)}"/>`,
  );
  const up = axis.ticks.map(
    (tick) =>
      html`<line class="grid" x1="${place.x(tick.place)}" x2="${place.x(tick.place)}" y1="0" y2="100%"/>`,
  );
  return html`${across}${up}`;
}

function breaks(place: Placing, { breaks: all }: FlightChart): Markup {
  return joined(
    all.map(({ place: at }) => {
      const x = place.x(at - 0.5);
      return html`<line class="phase-edge" x1="${x}" x2="${x}" y1="0" y2="100%"/>`;
    }),
  );
}

/** Names of the new parts above their lines; the sentence names them where there are too many. */
function breakNames(place: Placing, { breaks: all }: FlightChart): Markup {
  if (all.length === 0 || all.length > MOST_BREAK_NAMES) return NOTHING;
  const wanted = all.map(({ place: at }) => place.xPercent(at - 0.5));
  const isClose = wanted.some((at, index) => index > 0 && at - (wanted[index - 1] ?? 0) < NAME_PERCENT);
  const placed = isClose ? spreadLabels(wanted, NAME_PERCENT) : wanted;
  return joined(
    all.map(({ words }, index) => {
      const at = placed[index] ?? 0;
      const isExtra = index < all.length - 1 ? "extra" : "";
      return html`<text class="${isExtra}" x="${percentText(at)}" y="12" text-anchor="${anchorAt(at)}">${words}</text>`;
    }),
  );
}

/** Left part of a plot that a label takes, percent. */
const LABEL_PERCENT = 16;

/** Planned numbers as dashed lines, named at their left end, on the side away from the points there. */
function plans(place: Placing, { plans: all, series }: FlightChart): Markup {
  const atLabel = series.flatMap((one) =>
    one.points.filter((point) => place.xPercent(middlePlace(point)) < LABEL_PERCENT),
  );
  return joined(
    all.map(({ value, words }) => {
      const y = place.y(value);
      const above = atLabel.filter((point) => point.value > value).length;
      const dy = above > atLabel.length / 2 ? 14 : -5;
      return html`<line class="plan-line" x1="0" x2="100%" y1="${y}" y2="${y}"/><text class="wall-words" x="0" dx="4" y="${y}" dy="${dy}">${words}</text>`;
    }),
  );
}

/** A thin line from flight to flight of one series. */
function joins(place: Placing): Markup {
  const { fromX, toX } = place.panel;
  const window = { fromX, toX, fromY: place.scale.from, toY: place.scale.to, columns: COLUMNS };
  const paths = place.panel.series.map(
    ({ style, trace }) => html`<path class="line join s${style}" d="${trusted(linePath(trace, window))}"/>`,
  );
  return box(joined(paths));
}

function points(place: Placing, chart: FlightChart): Markup {
  const half = HALF_PX.find(({ from }) => chart.axis.places > from)?.half ?? WIDEST_HALF_PX;
  return joined(chart.series.map((series) => seriesPoints(place, series, half)));
}

function seriesPoints(place: Placing, { style, points: own, id }: FlightSeries, half: number): Markup {
  const intervals = own.map((point) => {
    if (point.low === null || point.high === null) return NOTHING;
    const x = place.x(middlePlace(point));
    return html`<line x1="${x}" x2="${x}" y1="${clipped(place, point.high)}" y2="${clipped(place, point.low)}"/>`;
  });
  const marks = own.map((point) => marker(style, half, place.x(middlePlace(point)), place.y(point.value)));
  return html`<g class="points s${style}" data-series="${id}">${intervals}${marks}</g>`;
}

function clipped(place: Placing, value: number): string {
  return percentText(Math.min(100, Math.max(0, place.yPercent(value))));
}

function marker(style: FlightSeries["style"], half: number, x: string, y: string): Markup {
  if (style === 1) return html`<circle cx="${x}" cy="${y}" r="${half}"/>`;
  const wide = half + 1;
  const shapes = {
    2: `M${-half} ${-half}h${2 * half}v${2 * half}h${-2 * half}z`,
    3: `M0 ${-wide}l${wide} ${2 * half}h${-2 * wide}z`,
    4: `M0 ${-wide}l${wide} ${wide}l${-wide} ${wide}l${-wide} ${-wide}z`,
  };
  return html`<svg x="${x}" y="${y}" overflow="visible"><path d="${trusted(shapes[style])}"/></svg>`;
}

function valueAxis(place: Placing): Markup {
  const { ticks, decimals } = place.scale;
  const labels = ticks.map(
    (tick) =>
      html`<text x="100%" dx="-6" dy="4" text-anchor="end" y="${place.y(tick)}">${toPlace(tick, -decimals)}</text>`,
  );
  return html`<svg class="value-axis" aria-hidden="true" focusable="false">${labels}</svg>`;
}

function flightAxis(place: Placing, { ticks, days }: FlightAxis): Markup {
  const numbers = ticks.map(
    (tick, index) =>
      html`<text class="${index % 2 === 1 ? "extra" : ""}" x="${place.x(tick.place)}" y="13" text-anchor="middle">${tick.words}</text>`,
  );
  const dates = days.map((day, index) => {
    const isExtra = index > 0 && index < days.length - 1;
    const anchor = anchorAt(place.xPercent(day.place));
    return html`<text class="${isExtra ? "extra" : ""}" x="${place.x(day.place)}" y="28" text-anchor="${anchor}">${day.words}</text>`;
  });
  return html`<svg class="flight-axis" aria-hidden="true" focusable="false">${numbers}${dates}</svg>`;
}
