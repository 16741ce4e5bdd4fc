import { minutesAndSeconds, toPlace } from "../../base/quantity/index.ts";
import { endLabels } from "./endLabels.ts";
import { freeHeight } from "./freeHeight.ts";
import { LINE_BOX, linePath } from "./linePath.ts";
import { html, joined, type Markup, trusted } from "./markup/markup.ts";
import type { Panel, PanelLimit, PanelMark, PanelSeries } from "./panel.ts";
import { limitsOffScale, panelScale } from "./panelScale.ts";
import { anchorAt, percentOf, percentText, secondsText } from "./position.ts";
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

/** Percent positions in one panel. */
class Placing {
  readonly panel: Panel;
  readonly scale: ValueScale;
  constructor(panel: Panel, scale: ValueScale) {
    this.panel = panel;
    this.scale = scale;
  }
  xPercent(x: number): number {
    return percentOf(x, this.panel.fromX, this.panel.toX);
  }
  x(x: number): string {
    return percentText(this.xPercent(x));
  }
  yPercent(value: number): number {
    return percentOf(value, this.scale.to, this.scale.from);
  }
  y(value: number): string {
    return percentText(this.yPercent(value));
  }
  width(fromX: number, toX: number): string {
    return percentText(Math.max(0, this.xPercent(toX) - this.xPercent(fromX)));
  }
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

function gaps(place: Placing): Markup {
  return joined(
    place.panel.gaps.map(({ fromX, toX, words }) => {
      const middle = (fromX + toX) / 2;
      return html`<rect class="gap" x="${place.x(fromX)}" width="${place.width(fromX, toX)}" y="0" height="100%" data-x="${secondsText(fromX)}" data-to="${secondsText(toX)}"/><text class="gap-words" x="${place.x(middle)}" y="${percentText(freeHeight(place.panel, place.scale, middle))}" dy="4" text-anchor="${anchorAt(place.xPercent(middle))}" data-x="${secondsText(middle)}">${words}</text>`;
    }),
  );
}

function limits(place: Placing): Markup {
  const off = limitsOffScale(place.panel);
  const drawn = place.panel.limits.filter((limit) => !off.includes(limit));
  return joined(drawn.map((limit) => wall(limit, place)));
}

function wall(limit: PanelLimit, place: Placing): Markup {
  const y = place.y(limit.value);
  const height = Math.round((place.yPercent(limit.value) / 100) * LINE_BOX.height);
  const tooth = limit.forbidden === "above" ? -26 : 26;
  let teeth = "";
  for (let x = 50; x < LINE_BOX.width; x += 100) teeth += `M${x} ${height}v${tooth}`;
  const isRight = !place.panel.marks.some((mark) => place.xPercent(mark.x) > 45);
  const at = isRight ? html`x="100%" text-anchor="end" dx="-4"` : html`x="0" text-anchor="start" dx="4"`;
  const dy = limit.forbidden === "above" ? -8 : 17;
  return html`<line class="wall" x1="0" x2="100%" y1="${y}" y2="${y}"/>${box(html`<path class="wall teeth" d="${trusted(teeth)}"/>`)}<text class="wall-words" ${at} y="${y}" dy="${dy}">${limit.words}<tspan class="extra">, ${limit.source}</tspan></text>`;
}

function lines(place: Placing, columns: number): Markup {
  const { fromX, toX } = place.panel;
  const window = { fromX, toX, fromY: place.scale.from, toY: place.scale.to, columns };
  const path = ({ id, style, trace }: PanelSeries) =>
    html`<path class="line s${style}" data-series="${id}" d="${trusted(linePath(trace, window))}"/>`;
  return box(joined(place.panel.series.map(path)));
}

function box(content: Markup): Markup {
  return html`<svg class="box" x="0" y="0" width="100%" height="100%" viewBox="0 0 ${LINE_BOX.width} ${LINE_BOX.height}" preserveAspectRatio="none">${content}</svg>`;
}

function marks(place: Placing): Markup {
  return joined(place.panel.marks.map((mark) => extreme(mark, place)));
}

/** A label this far below a wall, percent of the height, would be struck through by it. */
const STRUCK_PERCENT = [4, 17] as const;

function extreme(mark: PanelMark, place: Placing): Markup {
  const isStruck = place.panel.limits.some((limit) => {
    const below = place.yPercent(mark.value) - place.yPercent(limit.value);
    return below > STRUCK_PERCENT[0] && below < STRUCK_PERCENT[1];
  });
  const dy = mark.side === "above" && !isStruck ? -8 : 18;
  const anchor = anchorAt(place.xPercent(mark.x));
  return html`<svg class="mark" x="${place.x(mark.x)}" y="${place.y(mark.value)}" overflow="visible" data-x="${secondsText(mark.x)}"><circle r="4"/><text y="${dy}" text-anchor="${anchor}">${mark.words}</text></svg>`;
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
