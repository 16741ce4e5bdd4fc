import { minutesAndSeconds, toPlace } from "../../base/quantity/index.ts";
import { endLabels } from "./endLabels.ts";
import { linePath } from "./linePath.ts";
import { html, joined, type Markup, trusted } from "./markup/markup.ts";
import type { Panel, PanelSeries } from "./panel.ts";
import { box, gaps, limits, marks } from "./panelOverlays.ts";
import { panelScale } from "./panelScale.ts";
import { Placing } from "./placing.ts";
import { secondsText } from "./position.ts";
import { timeTicks } from "./timeTicks.ts";
import type { ValueScale } from "./valueScale.ts";

/** Most time ticks on a wide screen; every second one goes on a narrow one. */
export const MOST_TIME_TICKS = 10;

/** The drawn parts of a panel; the report lays them out side by side. Each stretches to its place. */
export interface PanelDrawing {
  readonly valueAxis: Markup;
  readonly plot: Markup;
  readonly ends: Markup;
  readonly timeAxis: Markup;
  readonly phaseNames: Markup;
  readonly scale: ValueScale;
}

/** Draws a panel. `nameId` and `descriptionId` are the elements that say what the picture shows. */
export function panelDrawing(
  panel: Panel,
  columns: number,
  names: { readonly nameId: string; readonly descriptionId: string },
): PanelDrawing {
  const scale = panelScale(panel);
  const place = new Placing(panel, scale);
  const layers = [tints(place), grid(place), gaps(place), limits(place), lines(place, columns), marks(place)];
  return {
    scale,
    valueAxis: valueAxis(place),
    plot: html`<svg class="plot" role="img" aria-labelledby="${names.nameId}" aria-describedby="${names.descriptionId}" focusable="false">${layers}</svg>`,
    ends: html`<svg class="ends" aria-hidden="true" focusable="false">${endLabels(panel, scale)}</svg>`,
    timeAxis: html`<svg class="time-axis" aria-hidden="true" focusable="false">${timeLabels(place)}</svg>`,
    phaseNames: html`<svg class="phase-names" aria-hidden="true" focusable="false">${tints(place)}${phaseNames(place)}</svg>`,
  };
}

function tints(place: Placing): Markup {
  return joined(
    place.panel.phases.map(
      ({ fromX, toX, tint }) =>
        html`<rect class="tint-${tint}" x="${place.x(fromX)}" width="${place.width(fromX, toX)}" y="0" height="100%" data-x="${secondsText(fromX)}" data-to="${secondsText(toX)}"/>`,
    ),
  );
}

function grid(place: Placing): Markup {
  const across = place.scale.ticks.map((tick) => {
    const isZero = tick === 0 ? " zero" : "";
    return html`<line class="grid${isZero}" x1="0" x2="100%" y1="${place.y(tick)}" y2="${place.y(tick)}"/>`;
  });
  const up = timeTicks(place.panel.fromX, place.panel.toX, MOST_TIME_TICKS).map(
    (tick) => html`<line class="grid" x1="${place.x(tick)}" x2="${place.x(tick)}" y1="0" y2="100%"/>`,
  );
  const edges = place.panel.phases
    .slice(1)
    .map(
      ({ fromX }) =>
        html`<line class="phase-edge" x1="${place.x(fromX)}" x2="${place.x(fromX)}" y1="0" y2="100%" data-x="${secondsText(fromX)}"/>`,
    );
  return html`${across}<g class="time-grid">${up}</g>${edges}`;
}

function lines(place: Placing, columns: number): Markup {
  const { fromX, toX } = place.panel;
  const window = { fromX, toX, fromY: place.scale.from, toY: place.scale.to, columns };
  const path = ({ id, style, trace }: PanelSeries) =>
    html`<path class="line s${style}" data-series="${id}" d="${trusted(linePath(trace, window))}"/>`;
  return box(joined(place.panel.series.map(path)));
}

function valueAxis(place: Placing): Markup {
  const { ticks, decimals } = place.scale;
  const labels = ticks.map((tick) => {
    return html`<text x="100%" dx="-6" dy="4" text-anchor="end" y="${place.y(tick)}">${toPlace(tick, -decimals)}</text>`;
  });
  return html`<svg class="value-axis" aria-hidden="true" focusable="false">${labels}</svg>`;
}

function timeLabels(place: Placing): Markup {
  return joined(
    timeTicks(place.panel.fromX, place.panel.toX, MOST_TIME_TICKS).map((tick, index) => {
      const isExtra = index % 2 === 1 ? "extra" : "";
      return html`<text class="${isExtra}" x="${place.x(tick)}" y="15" text-anchor="middle">${minutesAndSeconds(tick)}</text>`;
    }),
  );
}

/** Width of a character and of the plot that a name is measured against, pixels. */
const CHARACTER_PX = 6.6;
const NARROW_PX = 180;
const WIDE_PX = 560;

function phaseNames(place: Placing): Markup {
  return joined(
    place.panel.phases.map(({ words, fromX, toX }) => {
      const share = (place.xPercent(toX) - place.xPercent(fromX)) / 100;
      const needPx = words.length * CHARACTER_PX + 8;
      const isExtra = share * NARROW_PX < needPx ? "extra" : "";
      const display = share * WIDE_PX < needPx ? "none" : "inline";
      return html`<text class="${isExtra}" x="${place.x(fromX)}" dx="4" y="12" display="${display}" data-x="${secondsText(fromX)}" data-to="${secondsText(toX)}">${words}</text>`;
    }),
  );
}
