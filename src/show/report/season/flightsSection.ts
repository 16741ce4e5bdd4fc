import { minutesAndSeconds, type Quantity } from "../../../base/quantity/index.ts";
import { MEASURE_WORDS, type MeasureName } from "../../../flight/analysis/index.ts";
import {
  flightVerdicts,
  flownPropellerOf,
  type JudgedFlight,
  type SeasonFlight,
  type WorstVerdict,
} from "../../../season/overview/index.ts";
import { html, type Markup, NOTHING, shortened, verdictShape, visibleText } from "../../charts/index.ts";
import { figureText } from "./figureText.ts";
import { flightRange, flightReference } from "./flightWords.ts";
import type { SeasonContext } from "./seasonInput.ts";
import {
  FLIGHTS_LEAD,
  FLIGHTS_TITLE,
  FLIGHTS_WITH_REPORTS,
  FLIGHTS_WITHOUT_REPORTS,
  groupSummary,
  LOG_NOT_COMPLETE,
  notJudgedWords,
} from "./sentences.ts";

/** More flights than this are folded into groups of so many. */
const MOST_ROWS = 200;
const GROUP = 100;
const LONGEST_NAME = 40;
const LONGEST_NOTE = 100;

/** Every flight a row, newest first; beyond 200 in groups of 100 that open by click or key. */
export function flightsSection(context: SeasonContext): Markup {
  const newest = [...context.judged].reverse();
  const lead = context.flightReportLinks === null ? FLIGHTS_WITHOUT_REPORTS : FLIGHTS_WITH_REPORTS;
  const body =
    newest.length <= MOST_ROWS
      ? table(context, newest, FLIGHTS_TITLE)
      : groupsOf(newest).map((group, index) => folded(context, group, index === 0));
  return html`<section aria-labelledby="flights"><h2 id="flights">${FLIGHTS_TITLE}</h2><p>${FLIGHTS_LEAD} ${lead}</p>${body}</section>`;
}

function groupsOf(all: readonly JudgedFlight[]): readonly (readonly JudgedFlight[])[] {
  const count = Math.ceil(all.length / GROUP);
  return Array.from({ length: count }, (_, at) => all.slice(at * GROUP, (at + 1) * GROUP));
}

function folded(context: SeasonContext, group: readonly JudgedFlight[], isOpen: boolean): Markup {
  const [first, last] = [group.at(-1)?.flight, group[0]?.flight];
  if (first === undefined || last === undefined) return NOTHING;
  const name = groupSummary(flightRange(first, last), first.day, last.day);
  return html`<details class="flights"${isOpen ? html` open` : NOTHING}><summary>${name}</summary>${table(context, group, name)}</details>`;
}

const HEADS = [
  "no.",
  "day",
  "flight",
  "pack",
  "propeller",
  "time, min:s",
  "charge, mAh",
  "peak current, A",
  "lowest cell, V",
  "controller peak, °C",
  "verdict and note",
];

function table(context: SeasonContext, rows: readonly JudgedFlight[], name: string): Markup {
  const heads = HEADS.map((head) => html`<th scope="col">${head}</th>`);
  return html`<div class="scroll" role="group" tabindex="0" aria-label="${name}, table"><table class="flight-rows"><thead><tr>${heads}</tr></thead><tbody>${rows.map((row) => flightRow(context, row))}</tbody></table></div>`;
}

function flightRow(context: SeasonContext, { flight, judgements }: JudgedFlight): Markup {
  const { entry } = flight;
  const { measures } = entry.check;
  const { limits, plan } = flightVerdicts(judgements);
  const figures = [
    measures.chargeUsedMah,
    measures.peakCurrentA,
    measures.minCellV,
    measures.controllerPeakC,
  ];
  const cells = figures.map((quantity) => html`<td>${figureText(quantity)}</td>`);
  return html`<tr><th scope="row">${flightReference(flight).short}</th><td class="day">${flight.day ?? "not known"}</td><td class="name">${flightName(context, flight)}</td><td>${short(entry.given.pack)}</td><td>${short(flownPropellerOf(flight))}</td><td>${timeText(flight)}</td>${cells}<td class="verdicts">${verdictWords("limits", limits)}${verdictWords("plan", plan)}${notes(flight)}</td></tr>`;
}

/** The flight's name, a link where its own report was written, with its log below. */
function flightName({ flightReportLinks }: SeasonContext, { entry }: SeasonFlight): Markup {
  const href = flightReportLinks?.get(entry.flight);
  const name = html`${shortened(visibleText(entry.flight), LONGEST_NAME).short}`;
  const shown = href !== undefined && isPlainLink(href) ? html`<a href="${href}">${name}</a>` : name;
  const file = shortened(visibleText(entry.log.file), LONGEST_NAME).short;
  return html`${shown}<span class="quiet">${file}</span>`;
}

/** What the pilot noted, and that a log is cut. */
function notes({ entry }: SeasonFlight): Markup {
  const { note } = entry.given;
  const noted = note === null || note === "" ? [] : [shortened(visibleText(note), LONGEST_NOTE).short];
  const all = [...(entry.check.complete ? [] : [LOG_NOT_COMPLETE]), ...noted];
  return html`${all.map((text) => html`<span class="note">${text}</span>`)}`;
}

/** A page below this one, or a part of it, and nothing else: no scheme, no root, no way up. */
function isPlainLink(href: string): boolean {
  const [path = "", part = "f1", ...more] = href.split("#");
  const isPath = path.split("/").every((step) => /^[\w.~%-]+$/.test(step) && !/^(?:\.|%2e)+$/i.test(step));
  return isPath && path.endsWith(".html") && /^f\d+$/.test(part) && more.length === 0;
}

function short(text: string | null): string {
  return text === null || text === "" ? "not stated" : shortened(visibleText(text), LONGEST_NAME).short;
}

/** By the pilot's watch where it was noted. */
function timeText({ entry }: SeasonFlight): string {
  if (entry.given.flownS !== null) return `${minutesAndSeconds(entry.given.flownS)} by watch`;
  return durationText(entry.check.measures.flightTimeS);
}

function durationText(time: Quantity): string {
  return time.value === null ? "not known" : minutesAndSeconds(time.value);
}

/** "limits: close, controller peak and 1 more; 2 not judged". */
function verdictWords(against: string, worst: WorstVerdict | null): Markup {
  if (worst === null) return NOTHING;
  const { verdict, lines, notJudged } = worst;
  const about = verdict === "outside" || verdict === "close" ? aboutLines(lines) : [];
  const open = notJudged === 0 || verdict === "not judged" ? [] : [notJudgedWords(notJudged)];
  const more = [...about, ...open].join("; ");
  const quiet = more === "" ? NOTHING : html`<span class="quiet">, ${more}</span>`;
  return html`<span class="worst">${verdictShape(verdict)} <span class="quiet">${against}:</span> <b>${verdict}</b>${quiet}</span>`;
}

function aboutLines([first, ...others]: readonly MeasureName[]): readonly string[] {
  if (first === undefined) return [];
  const more = others.length === 0 ? "" : ` and ${others.length} more`;
  return [`${MEASURE_WORDS[first]}${more}`];
}
