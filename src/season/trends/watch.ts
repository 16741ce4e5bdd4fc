import { mannKendall, shiftTest } from "../../base/statistics/index.ts";

/** The side that is bad for a measure: the tests look only there. */
export type WatchedDirection = "up" | "down";

/** A change that the series shows beyond chance. */
export interface Alarm {
  readonly kind: "trend" | "shift";
  /** Number of points at the look that raised it. */
  readonly afterPoints: number;
  /** Points before the shift, from the first of the series; for a trend 0. */
  readonly splitAfter: number;
  readonly p: number;
}

/** One planned look: alarms when the trend or the shift is less likely than this by chance. */
interface Look {
  readonly points: number;
  readonly trendP: number;
  readonly shiftP: number;
}

/** Levels for FOUR_SERIES series watched together: any alarm in 12 flights without change stays below 5 %. */
const FIRST_LOOKS: readonly Look[] = [
  { points: 6, trendP: 0.0014, shiftP: 0.0004 },
  { points: 8, trendP: 0.002, shiftP: 0.0008 },
  { points: 10, trendP: 0.0025, shiftP: 0.0016 },
  { points: 12, trendP: 0.0045, shiftP: 0.0024 },
];
const FOUR_SERIES = 4;
const LATER_LOOKS_EVERY = 4;
/** A look goes back this many points, and only so many looks count: what has settled since is no news. */
export const REACH_POINTS = 48;
const LATEST_LOOKS = FIRST_LOOKS.length;
/** An exact chance of 1/720 is printed as .0014: rounding must not decide. */
const ROUNDING = 1e-5;
const SEED = 20_260_614;

export const FEWEST_POINTS = FIRST_LOOKS[0]?.points ?? 0;

/**
 * Watches a series of one measure for a creeping change (Mann-Kendall, exact for few points) and for a
 * sudden one (permutation test of the best split), one-sided, only at planned looks: after 6, 8, 10 and 12
 * points, then every 4. Looking after every flight at 5 % would cry wolf in most seasons. In a long series the
 * latest four looks count, each over the latest 48 points.
 * @param values finite, in flight order
 * @param seriesCount how many series are watched together; the levels scale with 4 / seriesCount
 * @param permutations of the shift test
 * @returns the first alarm of those looks, or null
 */
export function watchSeries(
  values: readonly number[],
  direction: WatchedDirection,
  seriesCount = FOUR_SERIES,
  permutations = 20_000,
): Alarm | null {
  const scale = FOUR_SERIES / seriesCount;
  for (const look of looksUpTo(values.length)) {
    const from = Math.max(0, look.points - REACH_POINTS);
    const alarm = alarmAt(values.slice(from, look.points), direction, look, scale, permutations);
    if (alarm === null) continue;
    const splitAfter = alarm.kind === "shift" ? from + alarm.splitAfter : 0;
    return { ...alarm, afterPoints: look.points, splitAfter };
  }
  return null;
}

function looksUpTo(points: number): readonly Look[] {
  const last = FIRST_LOOKS.at(-1);
  const looks = FIRST_LOOKS.filter((look) => look.points <= points);
  if (!last) return looks;
  const later: Look[] = [];
  for (let at = last.points + LATER_LOOKS_EVERY; at <= points; at += LATER_LOOKS_EVERY) {
    later.push({ ...last, points: at });
  }
  return [...looks, ...later].slice(-LATEST_LOOKS);
}

function alarmAt(
  values: readonly number[],
  direction: WatchedDirection,
  look: Look,
  scale: number,
  permutations: number,
): Alarm | null {
  const trend = mannKendall(
    values.map((_, index) => index),
    values,
  );
  const trendP = direction === "up" ? trend.risingP : trend.fallingP;
  if (trendP <= (look.trendP + ROUNDING) * scale) {
    return { kind: "trend", afterPoints: values.length, splitAfter: 0, p: trendP };
  }
  const shift = shiftTest(values, direction, SEED, permutations, look.shiftP * scale);
  if (shift === null) return null;
  return { kind: "shift", afterPoints: values.length, splitAfter: shift.splitAfter, p: shift.p };
}
