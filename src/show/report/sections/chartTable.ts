import { minutesAndSeconds, toPlace } from "../../../base/quantity/index.ts";
import type { Recording } from "../../../log/recording/index.ts";
import {
  html,
  type Markup,
  NOTHING,
  type Panel,
  type PanelSeries,
  tableRows,
  traceExtremes,
} from "../../charts/index.ts";
import type { FlightContext } from "../reportInput.ts";
import { CLOCK_HEAD, clockHeadOn, HIGHEST, LOWEST, seconds, tableCaption } from "../sentences.ts";

/** The table of one chart: regular steps and every extreme, at most 200 rows. */
export function chartTable(context: FlightContext, panel: Panel): Markup {
  const { recording, analysed } = context;
  const range = { first: analysed.firstRow, last: analysed.lastRow };
  const { rows, stepS } = tableRows(recording.timeS, range, extremeRows(panel, recording.timeS));
  const heads = panel.series.map(({ words }) => html`<th scope="col">${words}, ${panel.unit}</th>`);
  const clock = clockColumn(recording, range);
  const clockHead = clock === null ? NOTHING : html`<th scope="col">${clock.head}</th>`;
  const body = rows.map((row) => tableRow(context, panel, row, clock));
  return html`<details class="table"><summary>${panel.title} as a table</summary><div class="scroll" role="group" tabindex="0" aria-label="${panel.title}, table"><table><caption>${tableCaption(panel.title, seconds(stepS))}</caption><thead><tr><th scope="col">time, min:s</th>${heads}<th scope="col">file line</th>${clockHead}</tr></thead><tbody>${body}</tbody></table></div></details>`;
}

interface ClockColumn {
  readonly head: string;
  readonly text: (row: number) => string;
}

/** The log's own clock as written; a date that all rows share stands in the head. Null without a clock. */
function clockColumn(
  { clockTextOfRow }: Recording,
  range: { readonly first: number; readonly last: number },
): ClockColumn | null {
  const first = clockTextOfRow(range.first);
  if (first === null) return null;
  const date = /^\d{4}-\d\d-\d\d(?=[T ])/.exec(first)?.[0];
  const isShared = date !== undefined && clockTextOfRow(range.last)?.startsWith(date) === true;
  const skipped = isShared ? date.length + 1 : 0;
  return {
    head: isShared ? clockHeadOn(date) : CLOCK_HEAD,
    text: (row) => clockTextOfRow(row)?.slice(skipped) ?? "",
  };
}

function tableRow(
  { recording }: FlightContext,
  panel: Panel,
  row: number,
  column: ClockColumn | null,
): Markup {
  const cells = panel.series.map((series) => {
    const words = extremeName(series, row);
    return html`<td>${words === null ? NOTHING : html`<b>${words}</b> `}${valueText(series.trace.y[row], panel.decimals)}</td>`;
  });
  const clock = column === null ? NOTHING : html`<td>${column.text(row)}</td>`;
  const time = minutesAndSeconds(recording.timeS[row] ?? 0);
  return html`<tr><th scope="row">${time}</th>${cells}<td>${recording.lineOfRow(row)}</td>${clock}</tr>`;
}

function valueText(value: number | undefined, decimals: number): string {
  return value === undefined || Number.isNaN(value) ? "no value" : toPlace(value, -decimals);
}

function extremeName({ trace }: PanelSeries, row: number): string | null {
  const found = traceExtremes(trace);
  if (found === null || found.lowestRow === found.highestRow) return null;
  return row === found.highestRow ? HIGHEST : row === found.lowestRow ? LOWEST : null;
}

function extremeRows(panel: Panel, timeS: ArrayLike<number>): readonly number[] {
  const own = panel.series.flatMap(({ trace }) => {
    const found = traceExtremes(trace);
    return found === null ? [] : [found.lowestRow, found.highestRow];
  });
  const marked = panel.marks.flatMap((mark) => rowAt(panel, timeS, mark.x));
  return [...new Set([...own, ...marked])];
}

function rowAt(panel: Panel, timeS: ArrayLike<number>, x: number): readonly number[] {
  const trace = panel.series[0]?.trace;
  if (trace === undefined) return [];
  for (let row = trace.first; row <= trace.last; row++) if (timeS[row] === x) return [row];
  return [];
}
