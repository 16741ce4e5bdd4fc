import { type Panel, traceExtremes } from "./panel.ts";
import { type ValueScale, valueScale } from "./valueScale.ts";

/** Limits further away than this many times the data's reach would flatten the line; they are named instead. */
const FARTHEST_LIMIT = 2.2;
/** The nearest limit is drawn from farther away, since its distance is what the reader looks for. */
const FARTHEST_NEAREST_LIMIT = 3;

/** The value axis of a panel, reaching over its data and over the limits that are near enough to draw. */
export function panelScale(panel: Panel): ValueScale {
  const [lowest, highest] = dataRange(panel);
  const off = limitsOffScale(panel);
  const near = panel.limits.filter((limit) => !off.includes(limit)).map((limit) => limit.value);
  return valueScale(Math.min(lowest, ...near), Math.max(highest, ...near), panel.startsAtZero);
}

/** Limits that the axis does not reach. */
export function limitsOffScale(panel: Panel): Panel["limits"] {
  const [lowest, highest] = dataRange(panel);
  const reach = Math.max(Math.abs(highest), Math.abs(lowest));
  const nearest = Math.min(...panel.limits.map((limit) => Math.abs(limit.value)));
  return panel.limits.filter(({ value }) => {
    const farthest = Math.abs(value) === nearest ? FARTHEST_NEAREST_LIMIT : FARTHEST_LIMIT;
    return Math.abs(value) > reach * farthest;
  });
}

function dataRange(panel: Panel): readonly [number, number] {
  let lowest = Number.POSITIVE_INFINITY;
  let highest = Number.NEGATIVE_INFINITY;
  for (const { trace } of panel.series) {
    const found = traceExtremes(trace);
    if (found === null) continue;
    lowest = Math.min(lowest, trace.y[found.lowestRow] ?? lowest);
    highest = Math.max(highest, trace.y[found.highestRow] ?? highest);
  }
  return lowest <= highest ? [lowest, highest] : [0, 1];
}
