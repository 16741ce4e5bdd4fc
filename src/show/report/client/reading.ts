import { bisector } from "../../charts/index.ts";
import type { ChartData, ChartDataPanel, ChartDataSeries } from "../panels/chartData.ts";

const nearest = bisector((time: number) => time).center;

/** Index of the sample nearest to a time; `times` rise. */
export function nearestSample(times: readonly number[], atS: number): number {
  return nearest(times, atS);
}

/** Seconds since the log began of every sample, from the steps of the data block. */
export function sampleTimes({ fromS, stepsMs }: Pick<ChartData, "fromS" | "stepsMs">): number[] {
  let ms = 0;
  return stepsMs.map((step) => {
    ms += step;
    return fromS + ms / 1000;
  });
}

/** Minutes, seconds and tenths: 72.34 -> "1:12.3". */
export function clockTenths(seconds: number): string {
  const tenths = Math.round(Math.abs(seconds) * 10);
  const minutes = Math.floor(tenths / 600);
  const rest = String(((tenths % 600) / 10).toFixed(1)).padStart(4, "0");
  return `${seconds < 0 ? "−" : ""}${minutes}:${rest}`;
}

/** When a sample was: "1:12.3, flight (0:41 to 5:30), 31.2 s after take-off". */
export function momentWords(data: ChartData, atS: number): string {
  const phase = data.phases.find((one) => atS >= one.fromS && atS < one.toS) ?? data.phases.at(-1);
  const since = data.takeOffS === null ? null : atS - data.takeOffS;
  const takeOff =
    since === null ? null : `${Math.abs(since).toFixed(1)} s ${since < 0 ? "before" : "after"} take-off`;
  return [clockTenths(atS), phase?.words, takeOff]
    .filter((part) => part !== null && part !== undefined)
    .join(", ");
}

/** What a panel reads at a sample: "1690 W", or each series with its name. */
export function panelReading(panel: ChartDataPanel, sample: number): string {
  const one = (series: ChartDataSeries) => valueWords(series.values[sample] ?? null, panel);
  const [first] = panel.series;
  if (panel.series.length === 1 && first !== undefined) return one(first);
  return panel.series.map((series) => `${series.words} ${one(series)}`).join(", ");
}

function valueWords(whole: number | null, panel: ChartDataPanel): string {
  if (whole === null) return "no value";
  return `${(whole / 10 ** panel.decimals).toFixed(panel.decimals)} ${panel.unit}`;
}
