import { toPlace } from "../../base/quantity/index.ts";
import { endLabels } from "./endLabels.ts";
import { LINE_BOX, linePath } from "./linePath.ts";
import { html, joined, type Markup, NOTHING, trusted } from "./markup/markup.ts";
import type { Panel } from "./panel.ts";
import { box } from "./panelOverlays.ts";
import type { Plane, PlaneMark, PlaneWall } from "./plane.ts";
import { planeLabels } from "./planeLabels.ts";
import { anchorAt, percentOf, percentText } from "./position.ts";

/** The drawn parts of a plane; the report lays them out side by side. */
export interface PlaneDrawing {
  readonly valueAxis: Markup;
  readonly plot: Markup;
  readonly ends: Markup;
  readonly xAxis: Markup;
}

const COLUMNS = 800;

/** Draws a plane. `nameId` and `descriptionId` are the elements that say what the picture shows. */
export function planeDrawing(
  plane: Plane,
  names: { readonly nameId: string; readonly descriptionId: string },
): PlaneDrawing {
  const layers = [grid(plane), box(inside(plane)), marks(plane), planeLabels(plane)];
  return {
    valueAxis: valueAxis(plane),
    plot: html`<svg class="plot" role="img" aria-labelledby="${names.nameId}" aria-describedby="${names.descriptionId}" focusable="false">${layers}</svg>`,
    ends: html`<svg class="ends" aria-hidden="true" focusable="false">${endLabels(asPanel(plane), plane.y)}</svg>`,
    xAxis: xAxis(plane),
  };
}

/** The lines as a panel, so that their end labels are those of every other chart. */
function asPanel({ id, x, lines }: Plane): Panel {
  const none = { limits: [], marks: [], phases: [], gaps: [] };
  const series = lines.filter(({ words }) => words !== "");
  return {
    id,
    title: "",
    unit: "",
    decimals: 0,
    fromX: x.from,
    toX: x.to,
    startsAtZero: false,
    series,
    ...none,
  };
}

function xAt({ x }: Plane, value: number): string {
  return percentText(percentOf(value, x.from, x.to));
}

function yAt({ y }: Plane, value: number): string {
  return percentText(percentOf(value, y.to, y.from));
}

function grid(plane: Plane): Markup {
  const across = plane.y.ticks.map(
    (tick) =>
      html`<line class="grid${tick === 0 ? " zero" : ""}" x1="0" x2="100%" y1="${yAt(plane, tick)}" y2="${yAt(plane, tick)}"/>`,
  );
  const up = plane.x.ticks.map(
    ({ at }) => html`<line class="grid" x1="${xAt(plane, at)}" x2="${xAt(plane, at)}" y1="0" y2="100%"/>`,
  );
  return html`${across}${up}`;
}

/** Everything that is stretched with the plot and cut at its edges. */
function inside(plane: Plane): Markup {
  const bands = plane.bands.map((band) => {
    const up = boxPath(plane, band.x, band.high);
    const back = boxPath(plane, reversed(band.x), reversed(band.low));
    return html`<path class="spread-area s${band.style}" d="${trusted(`M${up}L${back}Z`)}"/>`;
  });
  const dots =
    plane.dots === null
      ? NOTHING
      : html`<path class="dots s${plane.dots.style}" d="${trusted(plane.dots.points.map(([x, y]) => `M${boxPath(plane, [x], [y])}h0`).join(""))}"/>`;
  const window = {
    fromX: plane.x.from,
    toX: plane.x.to,
    fromY: plane.y.from,
    toY: plane.y.to,
    columns: COLUMNS,
  };
  const lines = plane.lines.map(
    ({ id, style, trace }) =>
      html`<path class="line s${style}" data-series="${id}" d="${trusted(linePath(trace, window))}"/>`,
  );
  return html`${bands}${dots}${plane.walls.map((wall) => wallPath(plane, wall))}${lines}`;
}

/** Points as path data in the box that is stretched over the plot. */
function boxPath({ x: axis, y: scale }: Plane, x: ArrayLike<number>, y: ArrayLike<number>): string {
  return Array.from({ length: x.length }, (_, k) => {
    const across = (percentOf(x[k] ?? 0, axis.from, axis.to) / 100) * LINE_BOX.width;
    const down = (percentOf(y[k] ?? 0, scale.to, scale.from) / 100) * LINE_BOX.height;
    return `${Math.round(across)} ${Math.round(down)}`;
  }).join("L");
}

function reversed(values: ArrayLike<number>): readonly number[] {
  return Array.from(values).reverse();
}

/** Length of a tooth and distance between teeth, in units of the box. */
const TOOTH = { across: 100, up: 26 } as const;
const TEETH_APART = { across: 160, up: 40 } as const;

function wallPath(plane: Plane, { axis, value }: PlaneWall): Markup {
  const isUpright = axis === "x";
  const at = isUpright
    ? Math.round((percentOf(value, plane.x.from, plane.x.to) / 100) * LINE_BOX.width)
    : Math.round((percentOf(value, plane.y.to, plane.y.from) / 100) * LINE_BOX.height);
  let teeth = "";
  if (isUpright) {
    for (let y = 20; y < LINE_BOX.height; y += TEETH_APART.up) teeth += `M${at} ${y}h${TOOTH.across}`;
  } else {
    for (let x = 50; x < LINE_BOX.width; x += TEETH_APART.across) teeth += `M${x} ${at}v${-TOOTH.up}`;
  }
  const wall = isUpright ? `M${at} 0V${LINE_BOX.height}` : `M0 ${at}H${LINE_BOX.width}`;
  return html`<path class="wall" d="${trusted(wall)}"/><path class="wall teeth" d="${trusted(teeth)}"/>`;
}

function marks(plane: Plane): Markup {
  return joined(
    plane.marks.map(
      (mark) =>
        html`${bars(plane, mark)}<circle class="plane-${mark.shape}" cx="${xAt(plane, mark.x)}" cy="${yAt(plane, mark.y)}" r="5"/>`,
    ),
  );
}

function bars(plane: Plane, { x, y, barX, barY }: PlaneMark): Markup {
  const across =
    barX === null
      ? NOTHING
      : html`<line class="plane-bar" x1="${xAt(plane, barX[0])}" x2="${xAt(plane, barX[1])}" y1="${yAt(plane, y)}" y2="${yAt(plane, y)}"/>`;
  const up =
    barY === null
      ? NOTHING
      : html`<line class="plane-bar" x1="${xAt(plane, x)}" x2="${xAt(plane, x)}" y1="${yAt(plane, barY[0])}" y2="${yAt(plane, barY[1])}"/>`;
  return html`${across}${up}`;
}

function valueAxis(plane: Plane): Markup {
  const { ticks, decimals } = plane.y;
  const labels = ticks.map(
    (tick) =>
      html`<text x="100%" dx="-6" dy="4" text-anchor="end" y="${yAt(plane, tick)}">${toPlace(tick, -decimals)}</text>`,
  );
  return html`<svg class="value-axis" aria-hidden="true" focusable="false">${labels}</svg>`;
}

function xAxis(plane: Plane): Markup {
  const labels = plane.x.ticks.map(({ at, words }, index) => {
    const percent = percentOf(at, plane.x.from, plane.x.to);
    const anchor = percent < 3 ? "start" : percent > 97 ? "end" : "middle";
    return html`<text class="${index % 2 === 1 ? "extra" : ""}" x="${percentText(percent)}" y="14" text-anchor="${anchor}">${words}</text>`;
  });
  return html`<svg class="plane-axis" aria-hidden="true" focusable="false">${labels}<text x="50%" y="30" text-anchor="${anchorAt(50)}">${plane.x.title}</text></svg>`;
}
