import { capital } from "../../../base/words/index.ts";
import { seasonCounts, seasonHeadline } from "../../../season/overview/index.ts";
import { html, type Markup } from "../../charts/index.ts";
import { SEASON_STYLE, SEASON_STYLE_HASH } from "../assets/generated.ts";
import { documentText } from "../document.ts";
import { cautionsSection } from "../sections/closingSections.ts";
import { factsSection } from "../sections/factsSection.ts";
import { longText } from "../sections/logSections.ts";
import { budgetOverSeasonSection } from "./budgetOverSeasonSection.ts";
import { calibrationSection } from "./calibrationSection.ts";
import { flightsSection } from "./flightsSection.ts";
import { packsSection } from "./packsSection.ts";
import { type SeasonContext, type SeasonReportInput, seasonContext } from "./seasonInput.ts";
import { seasonMethods } from "./seasonMethods.ts";
import {
  countsWords,
  EMPTY_SEASON,
  flownWords,
  footerWords,
  NO_SINCE_LAST,
  NOT_A_PROMISE_OF_A_SEASON,
  seasonTitle,
} from "./sentences.ts";
import { heatSection, marginsSection } from "./stackSections.ts";
import { timerSection } from "./timerSection.ts";
import { trendsSection } from "./trendsSection.ts";

/** Sections of a season, in reading order. A new part of the report is one more entry. */
const SECTIONS: readonly ((context: SeasonContext) => Markup)[] = [
  timerSection,
  trendsSection,
  heatSection,
  marginsSection,
  flightsSection,
  packsSection,
  budgetOverSeasonSection,
  calibrationSection,
  ({ facts, budget }) => factsSection(facts, budget),
  () => cautionsSection(NOT_A_PROMISE_OF_A_SEASON),
  () => seasonMethods(),
];

/**
 * The report of one aircraft's flights as one self-contained HTML text: no request, no date, no locale; the
 * same input gives the same bytes.
 */
export function seasonReport(input: SeasonReportInput): string {
  const context = seasonContext(input);
  const body = input.entries.length === 0 ? html`<p class="headline">${EMPTY_SEASON}</p>` : season(context);
  const footer = html`<footer><p>${footerWords(input.release, input.aircraft, input.entries.length)}</p></footer>`;
  const page = html`<main>${opening(context)}${body}</main>${footer}`;
  return documentText(seasonTitle(input.aircraft), page, { text: SEASON_STYLE, hash: SEASON_STYLE_HASH });
}

function opening({ aircraft, flights }: SeasonContext): Markup {
  const counts = seasonCounts(flights);
  const flown =
    counts.flightsWithTime === 0 ? [] : [flownWords(counts.flownS, counts.flightsWithTime, counts.flights)];
  const facts = [...countsWords(counts), ...flown].map((text) => html`<li>${text}</li>`);
  return html`<header><h1>${longText(aircraft)}</h1><div class="file">Season report</div><ul class="facts">${facts}</ul></header>`;
}

function season(context: SeasonContext): Markup {
  const { timer, trends } = context;
  const since = trends.sinceLastFlight ?? NO_SINCE_LAST;
  return html`<p class="headline">${capital(seasonHeadline(timer, trends))}</p><p class="since">${since}</p>${SECTIONS.map((section) => section(context))}`;
}
