import { known, type Quantity, unknown } from "../../../base/quantity/index.ts";
import {
  groupedPoints,
  type SeasonFlight,
  type SeasonPoint,
  seasonRange,
} from "../../../season/overview/index.ts";
import { html, type Markup, type PanelLimit } from "../../charts/index.ts";
import { limitWords } from "../sentences.ts";
import { fittingBreaks } from "./changes.ts";
import { flightFigure, numberWithUnit, type SeasonChart } from "./flightFigure.ts";
import { flightReference } from "./flightWords.ts";
import { pointTable } from "./pointTable.ts";
import type { SeasonContext } from "./seasonInput.ts";
import { pointsOf } from "./seasonPoints.ts";
import {
  AMBIENT_HOW,
  HEAT_LEAD,
  HEAT_TITLE,
  MARGINS_LEAD,
  MARGINS_TITLE,
  missingSentence,
  NOT_LOGGED,
  notNotedSentence,
  onlyValueSentence,
  planWords,
  rangeSentence,
  reserveWords,
  stackTableCaption,
} from "./sentences.ts";

/** One panel of a stack over flights. */
interface StackPanel {
  readonly id: string;
  readonly title: string;
  readonly unit: string;
  readonly startsAtZero: boolean;
  readonly pick: (flight: SeasonFlight) => Quantity;
  readonly limits: (context: SeasonContext) => readonly (PanelLimit | null)[];
  readonly planned: (context: SeasonContext) => number | null;
  /** The side to watch. */
  readonly watched: "highest" | "lowest";
  /** What to do when no flight gives it. */
  readonly how: string;
}

/** The air of the day is a stated number: a point without an interval of its own. */
function ambientOf({ entry }: SeasonFlight): Quantity {
  const { ambientC } = entry.given;
  return ambientC === null ? unknown("degC", "nobody said") : known(ambientC, 0, "degC", "measured");
}

const HEAT: readonly StackPanel[] = [
  {
    id: "controller-peak",
    title: "Controller peak",
    unit: "degC",
    startsAtZero: false,
    pick: ({ entry }) => entry.check.measures.controllerPeakC,
    limits: ({ facts }) => [wall(facts.controller.limitC, "degC", "above", limitWords, "controller")],
    planned: ({ budget }) => budget.planned.controllerPeakC,
    watched: "highest",
    how: NOT_LOGGED,
  },
  {
    id: "mean-current",
    title: "Mean current",
    unit: "A",
    startsAtZero: true,
    pick: ({ entry }) => entry.check.measures.meanCurrentA,
    limits: () => [],
    planned: ({ budget }) => budget.planned.meanCurrentA,
    watched: "highest",
    how: NOT_LOGGED,
  },
  {
    id: "ambient",
    title: "Air of the day",
    unit: "degC",
    startsAtZero: false,
    pick: ambientOf,
    limits: () => [],
    planned: () => null,
    watched: "highest",
    how: AMBIENT_HOW,
  },
];

const MARGINS: readonly StackPanel[] = [
  {
    id: "peak-current",
    title: "Peak current",
    unit: "A",
    startsAtZero: true,
    pick: ({ entry }) => entry.check.measures.peakCurrentA,
    limits: ({ facts }) => [
      wall(facts.controller.burstA ?? facts.controller.continuousA, "A", "above", limitWords, "controller"),
      wall(facts.pack.maxContinuousA, "A", "above", limitWords, "pack"),
    ],
    planned: () => null,
    watched: "highest",
    how: NOT_LOGGED,
  },
  {
    id: "lowest-cell",
    title: "Lowest cell voltage",
    unit: "V",
    startsAtZero: false,
    pick: ({ entry }) => entry.check.measures.minCellV,
    limits: ({ facts }) => [wall(facts.pack.minLoadedCellV, "V", "below", limitWords, "under load")],
    planned: ({ budget }) => budget.planned.minCellV,
    watched: "lowest",
    how: NOT_LOGGED,
  },
  {
    id: "charge-left",
    title: "Charge left",
    unit: "%",
    startsAtZero: true,
    pick: ({ entry }) => entry.check.measures.chargeLeftPct,
    limits: ({ budget }) => [wall(budget.reservePct, "%", "below", reserveWords, "to land with")],
    planned: () => null,
    watched: "lowest",
    how: NOT_LOGGED,
  },
];

function wall(
  value: number | null,
  unit: string,
  forbidden: PanelLimit["forbidden"],
  words: (value: string) => string,
  source: string,
): PanelLimit | null {
  return value === null ? null : { value, words: words(numberWithUnit(value, unit)), source, forbidden };
}

/** Controller temperature with the load and the weather that explain it, on one flight axis. */
export function heatSection(context: SeasonContext): Markup {
  return stack(context, "heat", HEAT_TITLE, HEAT_LEAD, HEAT);
}

/** How near each flight came to the walls of current, volts and charge. */
export function marginsSection(context: SeasonContext): Markup {
  return stack(context, "margins", MARGINS_TITLE, MARGINS_LEAD, MARGINS);
}

function stack(
  context: SeasonContext,
  id: string,
  title: string,
  lead: string,
  panels: readonly StackPanel[],
): Markup {
  const drawn = panels.map((panel) => ({
    panel,
    points: groupedPoints(pointsOf(context.flights, panel.pick), context.groupedBy),
  }));
  const figures = drawn.map(({ panel, points }, index) =>
    points.length === 0
      ? html`<p class="not-drawn">${notNotedSentence(panel.title, panel.how)}</p>`
      : flightFigure(chartOf(context, panel, points), {
          hasAxis: index === drawn.length - 1,
          hasBreakNames: index === 0,
        }),
  );
  const columns = drawn.map(({ panel, points }) => ({ head: panel.title, unit: panel.unit, points }));
  const table = pointTable(title, stackTableCaption(context.groupedBy), columns, context);
  return html`<section class="stack season-stack" aria-labelledby="${id}"><h2 id="${id}">${title}</h2><p>${lead}</p>${figures}${table}</section>`;
}

function chartOf(context: SeasonContext, panel: StackPanel, points: readonly SeasonPoint[]): SeasonChart {
  const { id, title, unit, startsAtZero } = panel;
  const limits = panel.limits(context).filter((limit) => limit !== null);
  const series = [{ id, words: "", style: 1 as const, points }];
  const breaks = fittingBreaks(context);
  const planned = panel.planned(context);
  const plans = planned === null ? [] : [{ value: planned, words: planWords(numberWithUnit(planned, unit)) }];
  const chart = { id, axis: context.axis, startsAtZero, series, limits, plans, breaks };
  return { chart, title, unit, sentences: [summary(context, panel)] };
}

/** Range over the season and where the highest was, and how many flights have no value. */
function summary({ flights }: SeasonContext, { title, unit, pick, watched }: StackPanel): string {
  const all = pointsOf(flights, pick);
  const { lowest, highest } = seasonRange(all);
  const at = flights[(watched === "highest" ? highest : lowest).fromPlace];
  const where = at === undefined ? "" : flightReference(at).words;
  const range =
    lowest.value === highest.value
      ? onlyValueSentence(title, numberWithUnit(highest.value, unit))
      : rangeSentence(
          title,
          numberWithUnit(lowest.value, unit),
          numberWithUnit(highest.value, unit),
          `${watched} in ${where}`,
        );
  const missing = flights.length - all.length;
  return missing === 0 ? range : `${range} ${missingSentence(missing, flights.length)}`;
}
