import type { Panel } from "./panel.ts";
import { percentOf } from "./position.ts";
import type { ValueScale } from "./valueScale.ts";

/** Heights tried for a label, percent from the top. */
const TRIED = [93, 80, 66, 52, 38, 24, 10];
/** Half of a label's width, percent of the plot. */
const REACH = 8;

/** The height around `x` that is farthest from every line and limit, percent from the top. */
export function freeHeight(panel: Panel, scale: ValueScale, x: number): number {
  const reach = ((panel.toX - panel.fromX) * REACH) / 100;
  const taken = panel.limits.map((limit) => percentOf(limit.value, scale.to, scale.from));
  for (const mark of panel.marks) {
    if (Math.abs(mark.x - x) > 4 * reach) continue;
    const at = percentOf(mark.value, scale.to, scale.from);
    taken.push(at, mark.side === "above" ? at - 8 : at + 10);
  }
  for (const { trace } of panel.series) {
    for (let row = trace.first; row <= trace.last; row++) {
      const value = trace.y[row] ?? Number.NaN;
      if (Number.isNaN(value) || Math.abs((trace.x[row] ?? 0) - x) > reach) continue;
      taken.push(percentOf(value, scale.to, scale.from));
    }
  }
  const clearance = (height: number) =>
    taken.reduce((least, at) => Math.min(least, Math.abs(at - height)), 100);
  return TRIED.reduce((best, height) => (clearance(height) > clearance(best) ? height : best));
}
