import { plainNumber, toPlace, unitText } from "../../../base/quantity/index.ts";
import {
  type FlightChart,
  flightDrawing,
  flightLimitsOffScale,
  html,
  type Markup,
  NOTHING,
} from "../../charts/index.ts";
import { limitsOffScaleSentence, scaleStartSentence } from "../sentences.ts";

/** A chart with its words. */
export interface SeasonChart {
  readonly chart: FlightChart;
  readonly title: string;
  /** As in JSON. */
  readonly unit: string;
  /** What the picture shows, from the season's own numbers; one paragraph each. */
  readonly sentences: readonly (string | Markup)[];
}

/** A chart over flights with title, sentences and axes. Charts of a stack share the axis of the last one. */
export function flightFigure(
  { chart, title, unit, sentences }: SeasonChart,
  { hasAxis, hasBreakNames } = { hasAxis: true, hasBreakNames: true },
): Markup {
  const id = `season-${chart.id}`;
  const drawing = flightDrawing(chart, { nameId: `${id}-name`, descriptionId: `${id}-text` });
  const off = flightLimitsOffScale(chart).map(({ words, source }) => `${words}, ${source}`);
  const isZero = chart.startsAtZero && drawing.scale.from === 0;
  const start = `${toPlace(drawing.scale.from, -drawing.scale.decimals)} ${unitText(unit)}`.trim();
  const scaleWords = [
    ...(off.length === 0 ? [] : [limitsOffScaleSentence(off)]),
    ...(isZero ? [] : [scaleStartSentence(start)]),
  ];
  const words = [...sentences, ...(scaleWords.length === 0 ? [] : [scaleWords.join(" ")])];
  const names = !hasBreakNames ? NOTHING : html`<div class="row"><div></div>${drawing.breakNames}</div>`;
  const axis = hasAxis ? html`<div class="row"><div></div>${drawing.flightAxis}</div>` : NOTHING;
  return html`<figure class="panel season-panel" data-panel="${chart.id}"><h3 id="${id}-name">${titleWithUnit(title, unit)}</h3>${names}<div class="row drawing">${drawing.valueAxis}${drawing.plot}${drawing.ends}</div>${axis}<figcaption class="says" id="${id}-text">${words.map((one) => html`<p>${one}</p>`)}</figcaption></figure>`;
}

/** "Pack resistance, mΩ"; without a unit the title alone. */
export function titleWithUnit(title: string, unit: string): string {
  return unitText(unit) === "" ? title : `${title}, ${unitText(unit)}`;
}

export function numberWithUnit(value: number, unit: string): string {
  return `${plainNumber(value)} ${unitText(unit)}`;
}
