import type { CheckedLogWithRows } from "../../../flight/check/index.ts";
import { html, type Markup } from "../../charts/index.ts";
import {
  durationWords,
  flightsWords,
  holesWords,
  rowsWords,
  titleWords,
  UNNAMED_AIRCRAFT,
} from "../sentences.ts";
import { longText } from "./logSections.ts";

export function title({ check }: CheckedLogWithRows): string {
  return titleWords(check.aircraft, check.log.file);
}

/** Whose log this is and how much of it there is, one quiet line under the title. */
export function opening({ check }: CheckedLogWithRows): Markup {
  const { log, flights } = check;
  const facts = [
    rowsWords(log.rowsUsed, log.rows),
    durationWords(log.durationS),
    holesWords(log.holes, log.holeS),
    ...(flights.length > 1 ? [flightsWords(flights.length)] : []),
  ];
  // A file without rows is none to say this of.
  const items = log.rows === 0 ? [] : facts.map((text) => html`<li>${text}</li>`);
  return html`<header><h1>${check.aircraft ?? UNNAMED_AIRCRAFT}</h1><div class="file">${check.aircraft === null ? "of " : "Flight check of "}${longText(log.file)}</div><ul class="facts">${items}</ul></header>`;
}
