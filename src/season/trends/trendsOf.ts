import { currentDoubt } from "../../flight/analysis/currentDoubt.ts";
import type { LeftOutFlight } from "../timer/index.ts";
import { heatSeries } from "./heatSeries.ts";
import { isWatched, judgeSeries } from "./judgeSeries.ts";
import { coefficientSeries, rateSeries } from "./otherSeries.ts";
import { packSeries } from "./packSeries.ts";
import type { RawSeries } from "./rawSeries.ts";
import { lastFlightLeftOut, leftOutWords, noFlights, summary } from "./sentences.ts";
import { sinceLastFlight } from "./sinceLast.ts";
import type { TrendResult, TrendSeries } from "./trend.ts";
import type { TrendFlight } from "./trendFlight.ts";

/** The alarm levels are made for at least this many series watched together. */
const FEWEST_WATCHED = 4;

/**
 * The trends of one aircraft's flights, in order: flights -> series by fitting -> each judged. A change of propeller,
 * pack, motor or controller starts a new series by itself.
 */
export function trendsOf(flights: readonly TrendFlight[], aircraft: string): TrendResult {
  const leftOut = doubtfulFlights(flights);
  const doubtful = new Set(leftOut.map(({ flight }) => flight));
  const believed = flights.filter(({ flight }) => !doubtful.has(flight));
  const raw = rawSeriesOf(believed);
  const watched = Math.max(FEWEST_WATCHED, raw.filter(isWatched).length);
  const series = raw.map((one) => judgeSeries(one, watched));
  return {
    format: "tallywatt/trend",
    version: 1,
    aircraft,
    series,
    leftOut,
    sinceLastFlight: notCompared(flights, leftOut) ?? sinceLastFlight(believed, raw),
    text: [textOf(series), ...leftOutWords(leftOut)].join(" "),
  };
}

/** Every series rests on the current. */
function doubtfulFlights(flights: readonly TrendFlight[]): readonly LeftOutFlight[] {
  return flights.flatMap(({ flight, check, load, facts }) => {
    const why = currentDoubt({ ...check, load }, facts.sensors.currentAccuracyPct);
    return why === null ? [] : [{ flight, why }];
  });
}

/** The last flight, where it was left out: the two before it would pass for it and the one before. */
function notCompared(flights: readonly TrendFlight[], leftOut: readonly LeftOutFlight[]): string | null {
  const last = flights.findLast(({ check }) => check.kind === "flight")?.flight;
  const left = leftOut.find(({ flight }) => flight === last);
  return left === undefined ? null : lastFlightLeftOut(left.flight, left.why);
}

function rawSeriesOf(flights: readonly TrendFlight[]): readonly RawSeries[] {
  const flown = flights.filter(({ check }) => check.kind === "flight");
  return [...heatSeries(flown), ...packSeries(flights), ...rateSeries(flown), ...coefficientSeries(flights)];
}

function textOf(series: readonly TrendSeries[]): string {
  if (series.length === 0) return noFlights();
  const count = (of: (one: TrendSeries) => boolean) => series.filter(of).length;
  const waiting = count(({ verdict }) => verdict === "not judged");
  const changed = count(({ alarm }) => alarm !== null);
  return summary(changed, series.length - waiting, waiting);
}
