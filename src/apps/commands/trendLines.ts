import type { TrendResult, TrendVerdict } from "../../season/trends/index.ts";

const MOST_LINES = 10;
/** What changed first, what cannot be judged last. */
const ORDER: Readonly<Record<TrendVerdict, number>> = {
  rising: 0,
  falling: 0,
  shifted: 0,
  "no change shown": 1,
  "not judged": 2,
};

/** The trends in at most ten lines: a summary, the last flight, then series by series. */
export function trendLines({ text, sinceLastFlight, series }: TrendResult): readonly string[] {
  const head = [text, ...(sinceLastFlight === null ? [] : [sinceLastFlight])];
  const lines = series
    .toSorted((one, other) => ORDER[one.verdict] - ORDER[other.verdict])
    .map((one) => one.text);
  if (head.length + lines.length <= MOST_LINES) return [...head, ...lines];
  const shown = MOST_LINES - head.length - 1;
  return [...head, ...lines.slice(0, shown), `${lines.length - shown} more series: see --json.`];
}
