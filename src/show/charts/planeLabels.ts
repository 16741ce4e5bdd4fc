import { type LabelTry, labelSpot, type Obstacle } from "./labelSpot.ts";
import { html, joined, type Markup, NOTHING } from "./markup/markup.ts";
import type { Plane, PlaneMark, PlaneWall } from "./plane.ts";
import { percentOf, percentText } from "./position.ts";

/** Steps in which a line is walked when it is kept clear of labels. */
const STEPS = 60;
const ACROSS = [0, 100, 25, 50, 75] as const;

/**
 * Labels of the walls and marks, each where it covers no line, dot, wall or earlier label if any place does. Upright
 * walls are named above the plot.
 */
export function planeLabels(plane: Plane): Markup {
  const taken: Obstacle[] = [...obstaclesOf(plane)];
  const placed = [
    ...plane.walls.map((wall) =>
      wall.axis === "x" ? uprightLabel(plane, wall) : wallLabel(plane, wall, taken),
    ),
    ...plane.marks.map((mark) => markLabel(plane, mark, taken)),
  ];
  return joined(placed);
}

/** Left to the words beside the chart on a narrow screen, and where no free place is near. */
function markLabel(plane: Plane, mark: PlaneMark, taken: Obstacle[]): Markup {
  const found = labelSpot(markTries(plane, mark), [{ full: mark.words, short: "" }], taken);
  if (!found.isFree) return NOTHING;
  taken.push(...found.covers);
  return labelAt(found.spot, " extra", html`${mark.words}`);
}

/** A wall keeps its words on a narrow screen; whose limit it is stands beside them only where there is room. */
function wallLabel(plane: Plane, wall: PlaneWall, taken: Obstacle[]): Markup {
  const { words, source } = wall;
  const whole = `${words}, ${source}`;
  const wordings = [whole, words].map((full) => ({ full, short: words }));
  const found = labelSpot(wallTries(plane, wall), wordings, taken);
  taken.push(...found.covers);
  const more = found.words.full === whole ? html`<tspan class="extra">, ${source}</tspan>` : NOTHING;
  return labelAt(found.spot, "", html`${words}${more}`);
}

function labelAt({ xPercent, yPercent, dx, dy, anchor }: LabelTry, more: string, content: Markup): Markup {
  return html`<text class="plane-words${more}" x="${percentText(xPercent)}" y="${percentText(yPercent)}" dx="${dx}" dy="${dy}" text-anchor="${anchor}">${content}</text>`;
}

function markTries({ x: { from, to }, y }: Plane, mark: PlaneMark): readonly LabelTry[] {
  const at = { xPercent: percentOf(mark.x, from, to), yPercent: percentOf(mark.y, y.to, y.from) };
  const sides = [
    { dx: 9, anchor: "start" },
    { dx: -9, anchor: "end" },
    { dx: 0, anchor: "middle" },
  ] as const;
  return [-10, 20, 4, -24, 34].flatMap((dy) => sides.map((side) => ({ ...at, ...side, dy })));
}

function wallTries({ y }: Plane, wall: PlaneWall): readonly LabelTry[] {
  const yPercent = percentOf(wall.value, y.to, y.from);
  return [-9, 16].flatMap((dy) => ACROSS.map((xPercent) => ({ yPercent, dy, ...leaning(xPercent) })));
}

function uprightLabel({ x }: Plane, { value, words, source }: PlaneWall): Markup {
  const xPercent = percentOf(value, x.from, x.to);
  const anchor = xPercent > 50 ? "end" : "start";
  const at = { xPercent, yPercent: 0, dx: 0, dy: -5, anchor } as const;
  return labelAt(at, "", html`${words}<tspan class="extra">, ${source}</tspan>`);
}

function leaning(xPercent: number): Pick<LabelTry, "xPercent" | "dx" | "anchor"> {
  if (xPercent === 0) return { xPercent, dx: 4, anchor: "start" };
  return xPercent === 100 ? { xPercent, dx: -4, anchor: "end" } : { xPercent, dx: 0, anchor: "middle" };
}

/** Points along everything that is drawn. */
function obstaclesOf({ x: { from, to }, y, lines, bands, dots, walls, marks }: Plane): readonly Obstacle[] {
  const at = (x: number, value: number): Obstacle => [percentOf(x, from, to), percentOf(value, y.to, y.from)];
  const edges = bands.flatMap(({ x, low, high }) => [walked(x, low, at), walked(x, high, at)]);
  return [
    ...lines.flatMap(({ trace }) => walked(trace.x, trace.y, at)),
    ...edges.flat(),
    ...(dots?.points ?? []).map(([x, value]) => at(x, value)),
    ...walls.flatMap(({ axis, value }) => {
      const [percent] = axis === "x" ? at(value, 0) : [at(from, value)[1]];
      return Array.from(
        { length: 101 },
        (_, share): Obstacle => (axis === "x" ? [percent, share] : [share, percent]),
      );
    }),
    ...marks.flatMap((mark) => [
      at(mark.x, mark.y),
      ...(mark.barX === null ? [] : walked(mark.barX, [mark.y, mark.y], at)),
      ...(mark.barY === null ? [] : walked([mark.x, mark.x], mark.barY, at)),
    ]),
  ];
}

function walked(
  x: ArrayLike<number>,
  y: ArrayLike<number>,
  at: (x: number, value: number) => Obstacle,
): readonly Obstacle[] {
  const steps = Math.max(1, Math.ceil((4 * STEPS) / x.length));
  const found: Obstacle[] = [];
  for (let k = 1; k < x.length; k++) {
    const [x0, x1, y0, y1] = [x[k - 1] ?? 0, x[k] ?? 0, y[k - 1] ?? 0, y[k] ?? 0];
    for (let step = 0; step <= steps; step++) {
      const share = step / steps;
      found.push(at(x0 + share * (x1 - x0), y0 + share * (y1 - y0)));
    }
  }
  return found;
}
