import { sampleStandardDeviation } from "../../base/statistics/index.ts";
import type { LogbookEntry } from "../logbook/index.ts";
import { powerTrainKey } from "./fittings.ts";
import type { RawSeries } from "./rawSeries.ts";
import { type ChangeSince, sinceFlight } from "./sentences.ts";
import type { TrendMeasure } from "./trend.ts";

const SHORT_WORDS: Readonly<Partial<Record<TrendMeasure, string>>> = {
  controllerRisePerA2: "controller heating",
  packResistanceMohm: "pack resistance",
  chargeRateMahPerS: "charge rate",
  propellerPowerCoefficient: "power coefficient",
};
/** Fewest differences that say what is usual, and how many standard deviations are not. */
const FEWEST_DIFFERENCES = 3;
const UNUSUAL = 2.5;

/** The last flight against the one before it on the same propeller, motor and controller; packs by themselves. */
export function sinceLastFlight(
  entries: readonly LogbookEntry[],
  series: readonly RawSeries[],
): string | null {
  const flights = entries.filter(({ check }) => check.kind === "flight");
  const last = flights.at(-1);
  if (last === undefined) return null;
  const before = flights.slice(0, -1).findLast((entry) => powerTrainKey(entry) === powerTrainKey(last));
  if (before === undefined) return null;
  const changes = series.flatMap((raw) => changeIn(raw, last.flight, before.flight) ?? []);
  return changes.length === 0 ? null : sinceFlight(before.flight, changes);
}

function changeIn(
  { measure, points, notJudged }: RawSeries,
  flight: string,
  before: string,
): ChangeSince | null {
  const what = SHORT_WORDS[measure];
  const [previous, last] = points.slice(-2);
  if (what === undefined || notJudged !== null || !previous || last?.flight !== flight) return null;
  const logs = points.map(({ value }) => Math.log(value));
  const steps = logs.slice(1).map((log, index) => log - (logs[index] ?? 0));
  const change = steps.at(-1) ?? 0;
  const earlier = steps.slice(0, -1);
  const isKnownSpread = earlier.length >= FEWEST_DIFFERENCES;
  const isUnusual = isKnownSpread && Math.abs(change) > UNUSUAL * sampleStandardDeviation(earlier);
  const since = previous.flight === before ? null : previous.flight;
  return { what, percent: 100 * Math.expm1(change), isUnusual, since };
}
