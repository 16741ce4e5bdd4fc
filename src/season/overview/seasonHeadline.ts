import type { TimerSetting } from "../timer/index.ts";
import type { TrendResult, TrendSeries } from "../trends/index.ts";
import { noTimerHeadline, quietTrends, seriesName, timerHeadline, trendsToLookAt } from "./sentences.ts";

/** The whole season in one sentence: the timer and what sets it, and whether anything creeps. */
export function seasonHeadline(timer: TimerSetting, trends: TrendResult): string {
  return `${timerClause(timer)}; ${trendClause(trends.series)}.`;
}

function timerClause(timer: TimerSetting): string {
  const { timerS, binding } = timer;
  if (timerS === null || binding === null) return noTimerHeadline(timer.why ?? "");
  return timerHeadline(timerS, binding, timer.flights, timer.provisional);
}

function trendClause(series: readonly TrendSeries[]): string {
  const alarmed = series.filter(isAlarmed);
  const [first] = alarmed;
  if (first !== undefined) return trendsToLookAt(seriesName(first), first.verdict, alarmed.length - 1);
  return quietTrends(series.filter(({ verdict }) => verdict === "no change shown").length);
}

/** A trend that shows a change beyond chance. */
export function isAlarmed({ verdict }: TrendSeries): boolean {
  return verdict === "rising" || verdict === "falling" || verdict === "shifted";
}
