import { toPlace } from "../../base/quantity/index.ts";
import { capital } from "../../base/words/index.ts";
import { leftOutRuns } from "../../flight/analysis/index.ts";
import type { LeftOutFlight } from "../timer/index.ts";
import type { TrendCrossing, TrendMeasure, TrendOf } from "./trend.ts";

export const NO_HEAT_TRACE = "its log does not let the controller's heating be solved";
export const NO_WHOLE_FLIGHT = "its log holds no whole flight";

const TREND_WORDS: Readonly<Record<TrendMeasure, string>> = {
  controllerRisePerA2: "controller heating per square ampere",
  controllerTimeConstantS: "controller cooling time",
  packResistanceMohm: "pack resistance",
  chargeRateMahPerS: "charge rate in flight",
  propellerPowerCoefficient: "static power coefficient",
};

/** What a trend measures, in words, lower case. */
export function trendMeasureWords(measure: TrendMeasure): string {
  return TREND_WORDS[measure];
}

/** "Pack resistance, pack A" or "Controller heating per square ampere, 18x10". */
export function seriesTitle(measure: TrendMeasure, { pack, propeller }: TrendOf): string {
  const of = [pack === null ? null : `pack ${pack}`, propeller].filter((one) => one !== null);
  return [capital(trendMeasureWords(measure)), ...of].join(", ");
}

export function coolingNeedsSpeed(): string {
  return "lost cooling cannot be told without a logged shaft speed; extra heat can";
}
export function ageingOrTemperature(): string {
  return "ageing cannot be told from temperature: log the pack's temperature or note the air with --ambient";
}
export function tooFewPoints(points: number, needed: number): string {
  return `${points} so far; ${needed} are needed to tell a change from chance`;
}

interface Pace {
  /** Percent a flight or charge. */
  readonly value: number;
  readonly low: number | null;
  readonly high: number | null;
  readonly per: "flight" | "charge";
}

/** An interval wholly on one side of nought is a hint, which the stricter test does not yet tell from chance. */
export function noChangeShown(points: number, pace: Pace | null): string {
  const side = pace === null ? null : (sideOf(pace.low, 1) ?? sideOf(pace.high, -1));
  if (side !== null && pace !== null)
    return `may be ${side}, not yet told from chance in ${points} logs: ${rangeWords(pace)}`;
  const range = pace === null || pace.low === null || pace.high === null ? "" : `: ${rangeWords(pace)}`;
  return `no change shown in ${points} logs${range}`;
}

/** The end of a slope's interval nearer to nought, where the whole interval lies on that side. */
function sideOf(end: number | null, sign: 1 | -1): "rising" | "falling" | null {
  if (end === null || !(sign * end > 0) || Number(size(end)) === 0) return null;
  return sign > 0 ? "rising" : "falling";
}

export function creeping(verdict: "rising" | "falling", pace: Pace): string {
  const { low, high } = pace;
  const range = low === null || high === null ? "" : ` (${signed(low)} to ${signed(high)} %)`;
  return `${verdict} by about ${size(pace.value)} % a ${pace.per}${range}`;
}

export function jumped(percent: number, after: string): string {
  return `shifted by ${signed(percent)} % after ${after}`;
}

function rangeWords({ low, high, per }: Pace): string {
  const isNought = [low, high].every((one) => Number(size(one ?? 0)) === 0);
  if (isNought) return `under 0.1 % a ${per} either way`;
  return `${signed(low ?? 0)} to ${signed(high ?? 0)} % a ${per}`;
}

export function lostCooling(): string {
  return "Its time constant grows too: cooling is being lost. Look at the air's way to the controller.";
}
export function extraHeat(): string {
  return "Look at the controller, its solder joints and its timing.";
}
export function anotherPropeller(): string {
  return "Was another propeller flown? Then give those flights theirs: tallywatt edit FLIGHT --propeller DxP.";
}
export function watchThePack(): string {
  return "Weaker under load and warmer: look at this pack before it is pushed again.";
}

export function willCross({ limit, flights, soonest, latest }: TrendCrossing, per: string): string {
  return `At this pace ${limit} in about ${flights} ${per}s (${soonest} to ${latest}).`;
}
export const HOT_DAY_LIMIT = "the controller meets its limit on the hot day";
export const LOADED_CELL_LIMIT = "the loaded cells meet their lowest voltage";

export interface ChangeSince {
  readonly what: string;
  readonly percent: number;
  readonly isUnusual: boolean;
  /** The flight it is compared with, where that is not the one the line is about; else null. */
  readonly since: string | null;
}

export function sinceFlight(before: string, changes: readonly ChangeSince[]): string {
  const words = changes.map(({ what, percent, isUnusual, since }) => {
    const remarks = [
      since === null ? [] : [`since ${since}`],
      isUnusual ? ["more than these flights differ"] : [],
    ];
    const remark = remarks.flat().join(", ");
    return `${what} ${signed(percent)} %${remark === "" ? "" : ` (${remark})`}`;
  });
  return `Since your last flight on this fitting, ${before}: ${words.join(", ")}.`;
}

export function summary(changed: number, judged: number, waiting: number): string {
  const found =
    judged === 0
      ? "No series has enough flights for a trend yet."
      : changed === 0
        ? `No change shown in ${judged} series.`
        : `${changed} of ${judged} series changed.`;
  return waiting === 0 || judged === 0 ? found : `${found} ${waiting} cannot be judged yet.`;
}

/** Each reason once, with the flights that it keeps out of every series. */
export function leftOutWords(leftOut: readonly LeftOutFlight[]): readonly string[] {
  const runs = leftOut.map(({ flight, why }) => ({ name: flight, why }));
  return leftOutRuns(runs).map((words) => `${capital(words)}.`);
}

export function lastFlightLeftOut(flight: string, why: string): string {
  return `Your last flight, ${flight}, is compared with none: ${why}.`;
}

export function noFlights(): string {
  return "The logbook holds no flight of this aircraft that a trend can rest on.";
}

/** A percentage with its sign: tenths below ten, whole from there on. */
function signed(percent: number): string {
  const text = size(percent);
  return `${Number(text) === 0 ? "" : percent > 0 ? "+" : "−"}${text}`;
}

function size(percent: number): string {
  const tenths = toPlace(Math.abs(percent), -1);
  return Number(tenths) < 10 ? tenths : toPlace(Math.abs(percent), 0);
}
