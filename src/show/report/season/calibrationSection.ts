import { putBacksLeftOut } from "../../../season/logbook/index.ts";
import { html, type Markup, NOTHING } from "../../charts/index.ts";
import { flightReference } from "./flightWords.ts";
import type { SeasonContext } from "./seasonInput.ts";
import { CALIBRATION_TITLE, calibrationSentence, NOT_CALIBRATED, putBackLeftOut } from "./sentences.ts";

const MOST_LISTED = 50;

/** What the charger says of the current sensor, and which put-backs could not be used. */
export function calibrationSection({ calibration, byName, entries }: SeasonContext): Markup {
  const text =
    calibration === null ? NOT_CALIBRATED : calibrationSentence(calibration, calibration.isApplied);
  const leftOut = putBacksLeftOut(entries)
    .slice(0, MOST_LISTED)
    .map(({ flight, why }) => {
      const at = byName.get(flight);
      return html`<li>${putBackLeftOut(at === undefined ? flight : flightReference(at).words, why)}</li>`;
    });
  const list = leftOut.length === 0 ? NOTHING : html`<ul>${leftOut}</ul>`;
  return html`<section aria-labelledby="calibration"><h2 id="calibration">${CALIBRATION_TITLE}</h2><p>${text}</p>${list}</section>`;
}
