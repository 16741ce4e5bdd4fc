import { minutesAndSeconds } from "../../base/quantity/index.ts";
import type { LimitName } from "../timer/index.ts";
import { type TrendMeasure, type TrendOf, type TrendVerdict, trendMeasureWords } from "../trends/index.ts";

const TREND_UNITS: Readonly<Record<TrendMeasure, string>> = {
  controllerRisePerA2: "degC/A2",
  controllerTimeConstantS: "s",
  packResistanceMohm: "mohm",
  chargeRateMahPerS: "mAh/s",
  propellerPowerCoefficient: "1",
};

/** Unit of a trend's points, as in JSON. */
export function trendUnit(measure: TrendMeasure): string {
  return TREND_UNITS[measure];
}

/** The fitting of a series: "pack A", "18x10, controller 100 A"; "all flights" where nothing parts them. */
export function fittingWords({ pack, propeller, controller }: TrendOf): string {
  const parts = [
    pack === null ? null : `pack ${pack}`,
    propeller,
    controller === null ? null : `controller ${controller}`,
  ].filter((part) => part !== null);
  return parts.length === 0 ? "all flights" : parts.join(", ");
}

/** The fitting in one or two words, for a label: "pack A", "18x10"; the controller where nothing else parts it. */
export function shortFitting({ pack, propeller, controller }: TrendOf): string {
  return pack === null ? (propeller ?? controller ?? "all") : `pack ${pack}`;
}

export function seriesName(series: { readonly measure: TrendMeasure; readonly of: TrendOf }): string {
  return `${trendMeasureWords(series.measure)} (${fittingWords(series.of)})`;
}

const LIMIT_WORDS: Readonly<Record<LimitName, string>> = {
  charge: "the charge",
  voltage: "the loaded cell voltage",
  temperature: "the controller's temperature on the hot day",
};

export function timerLimitWords(limit: LimitName): string {
  return LIMIT_WORDS[limit];
}

export function timerHeadline(
  timerS: number,
  binding: LimitName,
  flights: number,
  isProvisional: boolean,
): string {
  const count = flights === 1 ? "1 flight" : `${flights} flights`;
  const doubt = isProvisional ? ", provisional" : "";
  return `Timer ${minutesAndSeconds(timerS)} from ${count}${doubt}, set by ${LIMIT_WORDS[binding]}`;
}

export function noTimerHeadline(why: string): string {
  return `No timer: ${why.split(";")[0] ?? why}`;
}

export function trendsToLookAt(first: string, verdict: TrendVerdict, others: number): string {
  const verb = verdict === "shifted" ? "has shifted" : `is ${verdict}`;
  const more = others === 0 ? "" : others === 1 ? ", and 1 more trend" : `, and ${others} more trends`;
  return `${first} ${verb}${more}`;
}

export function quietTrends(judged: number): string {
  if (judged === 0) return "no trend can be judged yet";
  return judged === 1
    ? "the one trend that can be judged shows no change"
    : `none of ${judged} trends shows a change`;
}
