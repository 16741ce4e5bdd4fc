import { minutesAndSeconds } from "../../../base/quantity/index.ts";
import { embedJson, html, type Markup, panelScale, thinnedRows, trusted } from "../../charts/index.ts";
import type { FlightContext } from "../reportInput.ts";
import { PHASE_WORDS } from "../sentences.ts";
import type { FlightPanel } from "./flightPanels.ts";
import { timeSpan } from "./panelParts.ts";

/** Rows that the cursor may step over in one report; shared out between its flights. */
const MOST_ROWS = 6000;
/** A thinned column keeps at most this many rows of one series. */
const ROWS_PER_COLUMN = 4;

/** What the report's script is given of one flight. Times in ms since `fromS`, values in whole 10^-decimals. */
export interface ChartData {
  readonly fromS: number;
  readonly toS: number;
  readonly takeOffS: number | null;
  /** Steps from one kept row to the next, ms. */
  readonly stepsMs: readonly number[];
  /** All rows of the flight; more than `stepsMs` holds when they were thinned. */
  readonly allRows: number;
  readonly phases: readonly { readonly words: string; readonly fromS: number; readonly toS: number }[];
  readonly panels: readonly ChartDataPanel[];
}

export interface ChartDataPanel {
  readonly id: string;
  readonly title: string;
  readonly unit: string;
  readonly decimals: number;
  readonly scale: readonly [from: number, to: number];
  readonly series: readonly ChartDataSeries[];
}

export interface ChartDataSeries {
  readonly id: string;
  readonly words: string;
  readonly values: readonly (number | null)[];
  /** Open stretches in ms since `fromS`. */
  readonly gapsMs: readonly (readonly [number, number])[];
}

/** The data block of one flight, as a script element that is never run. */
export function dataBlock(id: string, data: ChartData): Markup {
  return html`<script type="application/json" data-chart="${id}">${trusted(embedJson(data))}</script>`;
}

export function chartDataOf(context: FlightContext, panels: readonly FlightPanel[]): ChartData {
  const { fromX, toX } = timeSpan(context);
  const rows = cursorRows(context, panels);
  const { timeS } = context.recording;
  const timesMs = rows.map((row) => Math.round(((timeS[row] ?? 0) - fromX) * 1000));
  return {
    fromS: fromX,
    toS: toX,
    takeOffS: context.analysed.takeOffS,
    stepsMs: timesMs.map((time, index) => time - (timesMs[index - 1] ?? 0)),
    allRows: context.analysed.lastRow - context.analysed.firstRow + 1,
    phases: context.flight.phases.map(({ phase, startS, endS }) => ({
      words: `${PHASE_WORDS[phase]} (${minutesAndSeconds(startS)} to ${minutesAndSeconds(endS)})`,
      fromS: startS,
      toS: endS,
    })),
    panels: panels.map((one) => dataPanel(one, rows, fromX)),
  };
}

function dataPanel({ panel }: FlightPanel, rows: readonly number[], fromX: number): ChartDataPanel {
  const scale = panelScale(panel);
  const per = 10 ** panel.decimals;
  const whole = (value: number | undefined) =>
    value === undefined || Number.isNaN(value) ? null : Math.round(value * per);
  return {
    id: panel.id,
    title: panel.title,
    unit: panel.unit,
    decimals: panel.decimals,
    scale: [scale.from, scale.to],
    series: panel.series.map(({ id, words, trace }) => ({
      id,
      words,
      values: rows.map((row) => whole(trace.y[row])),
      gapsMs: trace.gaps.map(({ from, to }) => [
        Math.round((from - fromX) * 1000),
        Math.round((to - fromX) * 1000),
      ]),
    })),
  };
}

/** Every row of the flight, or, of a long log, the rows that draw the same lines. */
function cursorRows(context: FlightContext, panels: readonly FlightPanel[]): readonly number[] {
  const { firstRow: first, lastRow: last } = context.analysed;
  const most = Math.floor(MOST_ROWS / context.count);
  if (last - first + 1 <= most) return Array.from({ length: last - first + 1 }, (_, index) => first + index);
  const traces = panels.flatMap(({ panel }) => panel.series.map(({ trace }) => trace));
  const columns = Math.max(1, Math.floor(most / (ROWS_PER_COLUMN * Math.max(1, traces.length))));
  const { fromX, toX } = timeSpan(context);
  const kept = new Set([first, last]);
  for (const trace of traces) {
    for (const row of thinnedRows(trace.x, trace.y, trace, { fromX, toX, columns })) kept.add(row);
  }
  return [...kept].sort((a, b) => a - b);
}
