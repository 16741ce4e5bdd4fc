import { html, type Markup } from "../charts/index.ts";
import { documentText } from "./document.ts";
import { heatSection } from "./parts/heatSection.ts";
import { loadSection } from "./parts/loadSection.ts";
import { packSection } from "./parts/packSection.ts";
import { whyOffSection } from "./parts/whyOffSection.ts";
import { type FlightContext, type FlightReportInput, flightContexts } from "./reportInput.ts";
import { budgetSection } from "./sections/budgetSection.ts";
import { chartSection } from "./sections/chartSection.ts";
import { cautionsSection, footer, methodsSection } from "./sections/closingSections.ts";
import { factsSection } from "./sections/factsSection.ts";
import { columnsSection, noticeList, repairsSection } from "./sections/logSections.ts";
import { measureSection, unknownSection } from "./sections/measureSection.ts";
import { opening, title } from "./sections/opening.ts";
import { flightTitle, NOT_COMPLETE, STOPPED_TITLE, stoppedSentence } from "./sentences.ts";

/** Sections of one flight, in reading order. A new part of the report is one more entry. */
const FLIGHT_SECTIONS: readonly ((context: FlightContext) => Markup)[] = [
  budgetSection,
  chartSection,
  whyOffSection,
  packSection,
  heatSection,
  loadSection,
  measureSection,
  unknownSection,
];

/**
 * The report of one log as one self-contained HTML text: no request, no date, no locale; the same input
 * gives the same bytes. A question or a refusal gives a short page that says what to do.
 */
export function flightReport(input: FlightReportInput): string {
  const { checked, facts, budget, release } = input;
  const contexts = flightContexts(input);
  const body =
    contexts.length === 0
      ? html`${opening(checked)}${stopped(input)}${columnsSection(checked)}`
      : html`${opening(checked)}${contexts.map(flightSection)}${columnsSection(checked)}${repairsSection(checked)}${factsSection(facts, budget)}${cautionsSection()}${methodsSection()}`;
  return documentText(title(checked), html`<main>${body}</main>${footer(checked, release)}`);
}

function flightSection(context: FlightContext): Markup {
  const { id, flight } = context;
  const cut = flight.complete ? "" : html`<p class="cut">${NOT_COMPLETE}</p>`;
  const sections = FLIGHT_SECTIONS.map((section) => section(context));
  return html`<section class="flight" aria-labelledby="${id}"><h2 id="${id}">${flightTitle(context.number, context.count, flight.kind, flight.startedAt)}</h2><p class="headline">${flight.headline}</p>${cut}${sections}</section>`;
}

function stopped({ checked }: FlightReportInput): Markup {
  const { notices } = checked.check.log;
  return html`<section aria-labelledby="stopped"><h2 id="stopped">${STOPPED_TITLE}</h2><p class="headline">${stoppedSentence(notices)}</p>${noticeList(notices)}</section>`;
}
