import { isKnown, minutesAndSeconds, quantityText, toPlace } from "../../../base/quantity/index.ts";
import type { MeasureName } from "../../../flight/analysis/index.ts";
import {
  html,
  limitsOffScale,
  type Markup,
  NOTHING,
  type Panel,
  panelDrawing,
  phaseStrip,
} from "../../charts/index.ts";
import { measureTitle } from "../measureMethods.ts";
import { type ChartData, chartDataOf, dataBlock } from "../panels/chartData.ts";
import { type FlightPanel, flightPanels } from "../panels/flightPanels.ts";
import { phasesOf, timeSpan } from "../panels/panelParts.ts";
import type { FlightContext } from "../reportInput.ts";
import {
  CURSOR_HELP,
  cursorRowsWords,
  extremeSentence,
  gapsSentence,
  limitsOffScaleSentence,
  NOTHING_DRAWN,
  notDrawnSentence,
  nothingMeasuredSentence,
  PHASE_WORDS,
  scaleStartSentence,
  ZOOM_BUTTONS,
  ZOOM_HELP,
} from "../sentences.ts";
import { chartTable } from "./chartTable.ts";

/** Pixel columns that lines are thinned to; shared out when a log holds many flights. */
const MOST_COLUMNS = 800;
const COLUMNS_OF_ALL_FLIGHTS = 1500;

/** The stacked panels of one flight on one time axis, with their tables. */
export function chartSection(context: FlightContext): Markup {
  const panels = flightPanels(context);
  const title = html`<h3 id="${context.id}-charts">The flight over time</h3>`;
  if (panels.length === 0)
    return html`<section class="stack">${title}<p>${NOTHING_DRAWN}</p>${notDrawn(context)}</section>`;
  const columns = Math.max(100, Math.min(MOST_COLUMNS, Math.floor(COLUMNS_OF_ALL_FLIGHTS / context.count)));
  const data = chartDataOf(context, panels);
  const figures = panels.map((one) => figure(context, one, columns));
  return html`<section class="stack" data-stack="${context.id}" aria-labelledby="${context.id}-charts">${title}${controls(data)}<p class="cursor-words" data-cursor-words data-live hidden></p>${strip(context)}${figures}${notDrawn(context)}${dataBlock(context.id, data)}</section>`;
}

/** Buttons and their help; the script shows them, since without it they do nothing. */
function controls({ stepsMs, allRows }: ChartData): Markup {
  const buttons = Object.entries(ZOOM_BUTTONS).map(
    ([action, words]) => html`<button type="button" data-act="${action}">${words}</button>`,
  );
  return html`<div class="controls" data-live hidden><div class="buttons">${buttons}</div><p class="help">${CURSOR_HELP} ${ZOOM_HELP} ${cursorRowsWords(stepsMs.length, allRows)}</p></div>`;
}

function strip(context: FlightContext): Markup {
  const { fromX, toX } = timeSpan(context);
  const names = { nameId: `${context.id}-phases`, descriptionId: `${context.id}-phase-list` };
  const items = context.flight.phases.map(
    ({ phase, startS, endS }) =>
      html`<li><b>${PHASE_WORDS[phase]}</b> ${minutesAndSeconds(startS)} to ${minutesAndSeconds(endS)}</li>`,
  );
  return html`<div class="phases"><h4 id="${names.nameId}" class="out-of-sight">Phases</h4><div class="row"><div></div>${phaseStrip(phasesOf(context), fromX, toX, names)}</div><ol class="phase-list" id="${names.descriptionId}">${items}</ol></div>`;
}

function figure(context: FlightContext, one: FlightPanel, columns: number): Markup {
  const { panel } = one;
  const id = `${context.id}-${panel.id}`;
  const drawing = panelDrawing(panel, columns, { nameId: `${id}-name`, descriptionId: `${id}-text` });
  const start =
    panel.startsAtZero && drawing.scale.from === 0 ? null : scaleStartText(panel, drawing.scale.from);
  const isMany = panel.series.length > 1 ? " many" : "";
  return html`<figure class="panel${isMany}" data-panel="${panel.id}"><figcaption><h4 id="${id}-name">${panel.title}, ${panel.unit}</h4><p id="${id}-text">${summary(context, one)}${start === null ? "" : ` ${start}`}</p><p class="readout" data-readout data-live hidden></p></figcaption><div class="row"><div></div>${drawing.phaseNames}</div><div class="row drawing">${drawing.valueAxis}${drawing.plot}${drawing.ends}</div><div class="row times"><div></div>${drawing.timeAxis}</div></figure>${chartTable(context, panel)}`;
}

function scaleStartText(panel: Panel, from: number): string {
  return scaleStartSentence(`${toPlace(from, -panel.decimals)} ${panel.unit}`);
}

/** What the picture shows, in sentences from the check's own numbers. */
function summary(context: FlightContext, { panel, highest, lowest }: FlightPanel): string {
  const limits = limitsOffScale(panel).map(({ words, source }) => `${words}, ${source}`);
  const off = limits.length === 0 ? [] : [limitsOffScaleSentence(limits)];
  const lengthS = panel.gaps.reduce((sum, gap) => sum + (gap.toX - gap.fromX), 0);
  const gaps = panel.gaps.length === 0 ? [] : [gapsSentence(panel.gaps.length, lengthS)];
  const extremes = [...highest, ...lowest].map((measure) => extremeText(context, measure));
  return [...extremes, ...off, ...gaps].join(" ");
}

function extremeText(context: FlightContext, measure: MeasureName): string {
  const quantity = context.flight.measures[measure];
  if (!isKnown(quantity)) return nothingMeasuredSentence(measureTitle(measure), quantity.why);
  return extremeSentence(measureTitle(measure), quantityText(quantity), quantity.sample ?? null);
}

function notDrawn({ recording }: FlightContext): Markup {
  if (recording.dead.length === 0) return NOTHING;
  const items = recording.dead.map(({ channel, why }) => html`<li>${notDrawnSentence(channel, why)}</li>`);
  return html`<ul class="not-drawn">${items}</ul>`;
}
