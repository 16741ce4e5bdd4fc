import { median } from "../../base/statistics/index.ts";

/** A number at a place of the season, with its interval where it has one. */
export interface SeasonPoint {
  /** First and last place it stands for; equal for one flight. */
  readonly fromPlace: number;
  readonly toPlace: number;
  readonly value: number;
  readonly low: number | null;
  readonly high: number | null;
  /** How many flights it stands for. */
  readonly flights: number;
}

/** Up to this many flights stand side by side; more are grouped into at most this many. */
export const MOST_SINGLE_FLIGHTS = 150;

/** How many neighbouring places one point stands for in a season of `places`; 1 shows every flight. */
export function groupSize(places: number): number {
  return Math.ceil(places / MOST_SINGLE_FLIGHTS);
}

/**
 * Points of `size` neighbouring places as one: their median, from the lowest to the highest value. A group of one
 * keeps its own interval. Points in rising order of place.
 */
export function groupedPoints(points: readonly SeasonPoint[], size: number): readonly SeasonPoint[] {
  if (size === 1) return points;
  const groups = new Map<number, SeasonPoint[]>();
  for (const point of points) {
    const key = Math.floor(point.fromPlace / size);
    const group = groups.get(key) ?? [];
    group.push(point);
    groups.set(key, group);
  }
  return [...groups.values()].map((group) => (group.length === 1 ? group[0]! : together(group)));
}

function together(group: readonly SeasonPoint[]): SeasonPoint {
  const values = group.map(({ value }) => value);
  return {
    fromPlace: group[0]!.fromPlace,
    toPlace: group.at(-1)!.toPlace,
    value: median(values),
    low: Math.min(...values),
    high: Math.max(...values),
    flights: group.length,
  };
}
