import { type Panel, traceExtremes } from "./panel.ts";
import { type ValueScale, valueScale } from "./valueScale.ts";

/** A limit further away than this many times the data's reach would flatten the line; it is named instead. */
const FARTHEST_LIMIT = 1.6;

/** The value axis of a panel, reaching over its data and over the limits that are near enough to draw. */
export function panelScale(panel: Panel): ValueScale {
  const [lowest, highest] = dataRange(panel);
  const near = panel.limits
    .filter((limit) => isNear(limit.value, lowest, highest))
    .map((limit) => limit.value);
  return valueScale(Math.min(lowest, ...near), Math.max(highest, ...near), panel.startsAtZero);
}

/** Limits that the axis does not reach. */
export function limitsOffScale(panel: Panel): Panel["limits"] {
  const [lowest, highest] = dataRange(panel);
  return panel.limits.filter((limit) => !isNear(limit.value, lowest, highest));
}

function isNear(limit: number, lowest: number, highest: number): boolean {
  const reach = Math.max(Math.abs(highest), Math.abs(lowest));
  return Math.abs(limit) <= reach * FARTHEST_LIMIT;
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
