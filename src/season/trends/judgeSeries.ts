import { between, type Quantity, unknown } from "../../base/quantity/index.ts";
import { mean, median, theilSen } from "../../base/statistics/index.ts";
import { adviceFor } from "./advice.ts";
import { crossingOf } from "./crossing.ts";
import type { RawSeries } from "./rawSeries.ts";
import { creeping, jumped, noChangeShown, seriesTitle, tooFewPoints, willCross } from "./sentences.ts";
import { shapeOf } from "./shape.ts";
import type { TrendSeries, TrendVerdict } from "./trend.ts";
import { type Alarm, FEWEST_POINTS, REACH_POINTS, watchSeries } from "./watch.ts";

const FEWEST_FOR_SLOPE = 3;

/** A series in numbers and words. @param seriesCount how many series are watched together */
export function judgeSeries(whole: RawSeries, seriesCount: number): TrendSeries {
  const alarm = whole.notJudged === null ? alarmOf(whole, seriesCount) : null;
  const raw = latestOf(whole);
  const shape = alarm && shapeOf(alarm.kind, raw.x, raw.variants[0] ?? []);
  const verdict = verdictOf(raw, alarm, shape?.kind ?? null);
  const slope = slopeOf(raw);
  const crossing = verdict === "rising" ? crossingOf(raw, slope) : null;
  const per = raw.measure === "packResistanceMohm" ? "charge" : "flight";
  const found = wordsOf(raw, verdict, slope, shape?.splitAfter ?? null, per);
  const more = alarm === null ? [] : [adviceFor(raw), ...(crossing ? [willCross(crossing, per)] : [])];
  return {
    measure: raw.measure,
    of: raw.of,
    points: whole.points,
    slopePerFlight: slope,
    verdict,
    alarm,
    crossing,
    text: [`${seriesTitle(raw.measure, raw.of)}: ${found}.`, ...more].join(" ").trim(),
  };
}

/** The points that the watch goes back to: slope and words are about them. */
function latestOf(raw: RawSeries): RawSeries {
  const { points, x, variants, entries, timeConstantsS } = raw;
  return {
    ...raw,
    points: points.slice(-REACH_POINTS),
    x: x.slice(-REACH_POINTS),
    variants: variants.map((values) => values.slice(-REACH_POINTS)),
    entries: entries.slice(-REACH_POINTS),
    ...(timeConstantsS && { timeConstantsS: timeConstantsS.slice(-REACH_POINTS) }),
  };
}

/** True when the series has points enough to raise an alarm: those share the chance of a false one. */
export function isWatched({ notJudged, points }: RawSeries): boolean {
  return notJudged === null && points.length >= FEWEST_POINTS;
}

/** An alarm only if each reading of the series raises one; the least certain of them is reported. */
function alarmOf({ variants, direction }: RawSeries, seriesCount: number): Alarm | null {
  let last: Alarm | null = null;
  for (const values of variants) {
    const alarm = watchSeries(values, direction, seriesCount);
    if (alarm === null) return null;
    if (last === null || alarm.p > last.p) last = alarm;
  }
  return last;
}

function verdictOf(raw: RawSeries, alarm: Alarm | null, shape: "trend" | "shift" | null): TrendVerdict {
  if (!isWatched(raw)) return "not judged";
  if (alarm === null) return "no change shown";
  if (shape === "shift") return "shifted";
  return raw.direction === "up" ? "rising" : "falling";
}

/** Over all readings of the series: the middle one's slope, the widest interval. */
function slopeOf({ x, variants, unit }: RawSeries): Quantity {
  const perFlight = `${unit}/flight`;
  if (x.length < FEWEST_FOR_SLOPE || new Set(x).size < 2 || variants.length === 0) {
    return unknown(perFlight, tooFewPoints(x.length, FEWEST_FOR_SLOPE));
  }
  const slopes = variants.map((values) => theilSen(x, values));
  const lows = slopes.map(({ low }) => low ?? Number.NaN);
  const highs = slopes.map(({ high }) => high ?? Number.NaN);
  const value = mean(slopes.map(({ slope }) => slope));
  if ([...lows, ...highs].some(Number.isNaN)) {
    return { value, low: null, high: null, unit: perFlight, basis: "derived" };
  }
  return between(value, Math.min(...lows), Math.max(...highs), perFlight, "derived");
}

function wordsOf(
  raw: RawSeries,
  verdict: TrendVerdict,
  slope: Quantity,
  splitAfter: number | null,
  per: "flight" | "charge",
): string {
  const values = raw.variants[0] ?? [];
  if (verdict === "not judged")
    return `not judged, ${raw.notJudged ?? tooFewPoints(values.length, FEWEST_POINTS)}`;
  if (verdict === "shifted" && splitAfter !== null) {
    const change = mean(values.slice(splitAfter)) / mean(values.slice(0, splitAfter)) - 1;
    return jumped(100 * change, raw.points[splitAfter - 1]?.flight ?? "");
  }
  const pace = paceOf(slope, median(values), per);
  if (verdict === "no change shown" || pace === null) return noChangeShown(values.length, pace);
  return creeping(verdict === "falling" ? "falling" : "rising", pace);
}

function paceOf(slope: Quantity, middle: number, per: "flight" | "charge") {
  if (slope.value === null) return null;
  const percent = (part: number | null) => (part === null ? null : (100 * part) / middle);
  return { value: (100 * slope.value) / middle, low: percent(slope.low), high: percent(slope.high), per };
}
