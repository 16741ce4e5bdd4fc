import type { SeasonPoint } from "./grouping.ts";

/** The points with the lowest and the highest value. @throws RangeError without a point */
export function seasonRange(points: readonly SeasonPoint[]): {
  readonly lowest: SeasonPoint;
  readonly highest: SeasonPoint;
} {
  const [first] = points;
  if (first === undefined) throw new RangeError("a range needs a point");
  return points.reduce(
    (found, point) => ({
      lowest: point.value < found.lowest.value ? point : found.lowest,
      highest: point.value > found.highest.value ? point : found.highest,
    }),
    { lowest: first, highest: first },
  );
}
