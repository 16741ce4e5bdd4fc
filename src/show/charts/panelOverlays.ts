import { freeHeight } from "./freeHeight.ts";
import { LINE_BOX } from "./linePath.ts";
import { html, joined, type Markup, trusted } from "./markup/markup.ts";
import type { PanelLimit, PanelMark } from "./panel.ts";
import { limitsOffScale } from "./panelScale.ts";
import type { Placing } from "./placing.ts";
import { anchorAt, percentText, secondsText } from "./position.ts";

/** Shaded stretches without data, with the words in the freest place. */
export function gaps(place: Placing): Markup {
  return joined(
    place.panel.gaps.map(({ fromX, toX, words }) => {
      const middle = (fromX + toX) / 2;
      return html`<rect class="gap" x="${place.x(fromX)}" width="${place.width(fromX, toX)}" y="0" height="100%" data-x="${secondsText(fromX)}" data-to="${secondsText(toX)}"/><text class="gap-words" x="${place.x(middle)}" y="${percentText(freeHeight(place.panel, place.scale, middle))}" dy="4" text-anchor="${anchorAt(place.xPercent(middle))}" data-x="${secondsText(middle)}">${words}</text>`;
    }),
  );
}

/** Walls of the limits that the axis reaches. */
export function limits(place: Placing): Markup {
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

/** Extremes with their labels. */
export function marks(place: Placing): Markup {
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
  const anchor = anchorAt(place.xPercent(mark.x), mark.lean);
  return html`<svg class="mark" data-lean="${mark.lean}" x="${place.x(mark.x)}" y="${place.y(mark.value)}" overflow="visible" data-x="${secondsText(mark.x)}"><circle r="4"/><text y="${dy}" text-anchor="${anchor}">${mark.words}</text></svg>`;
}

/** The box that lines are stretched in. */
export function box(content: Markup): Markup {
  return html`<svg class="box" x="0" y="0" width="100%" height="100%" viewBox="0 0 ${LINE_BOX.width} ${LINE_BOX.height}" preserveAspectRatio="none">${content}</svg>`;
}
