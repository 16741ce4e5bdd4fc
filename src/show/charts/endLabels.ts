import { html, joined, type Markup, NOTHING, trusted } from "./markup/markup.ts";
import { lastValueRow, type Panel, type PanelSeries } from "./panel.ts";
import { percentOf, percentText } from "./position.ts";
import { spreadLabels } from "./spreadLabels.ts";
import type { ValueScale } from "./valueScale.ts";

/** Room a label needs, percent of the lowest plot height that is used (120 px for 15 px of text). */
export const LABEL_APART = 13;

/** Marker of each line style: circle, square, triangle, diamond, about 9 px across. */
const MARKERS: Readonly<Record<PanelSeries["style"], Markup>> = {
  1: trusted('<circle cx="6" cy="0" r="4.5"/>'),
  2: trusted('<path d="M2 -4h8v8h-8z"/>'),
  3: trusted('<path d="M6 -5.5l5.5 9.5h-11z"/>'),
  4: trusted('<path d="M6 -5.5l5.5 5.5l-5.5 5.5l-5.5 -5.5z"/>'),
};

/** The marker of a line style by itself, to stand before a sentence about its line. */
export function seriesMark(style: PanelSeries["style"]): Markup {
  return html`<svg class="series-mark end s${style}" width="13" height="13" viewBox="-0.5 -6.5 13 13" aria-hidden="true" focusable="false">${MARKERS[style]}</svg>`;
}

/** Direct labels at the lines' ends with their markers, moved apart where lines end close together. */
export function endLabels(panel: Panel, scale: ValueScale): Markup {
  const heights = endHeights(panel, scale, panel.toX);
  return joined(panel.series.map((series, index) => endLabel(series, heights[index] ?? null)));
}

/** Percent from the top where each series' label goes, null for a series without a value up to `toX`. */
export function endHeights(
  panel: Pick<Panel, "series">,
  scale: ValueScale,
  toX: number,
): readonly (number | null)[] {
  const ends = panel.series.map(({ trace }) => {
    const row = lastValueRow(trace, toX);
    return row < 0 ? null : percentOf(trace.y[row] ?? 0, scale.to, scale.from);
  });
  const placed = spreadLabels(
    ends.filter((end) => end !== null),
    LABEL_APART,
  );
  let next = 0;
  return ends.map((end) => (end === null ? null : (placed[next++] ?? end)));
}

function endLabel(series: PanelSeries, height: number | null): Markup {
  if (height === null) return NOTHING;
  return html`<svg class="end s${series.style}" y="${percentText(height)}" overflow="visible" data-series="${series.id}">${MARKERS[series.style]}<text x="15" y="4">${series.words}</text></svg>`;
}
