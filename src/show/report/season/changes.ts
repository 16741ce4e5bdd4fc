import type { FittingChange } from "../../../season/overview/index.ts";
import { type FlightBreak, html, type Markup, NOTHING, shortened } from "../../charts/index.ts";
import { flightReference } from "./flightWords.ts";
import type { FlightsContext } from "./seasonInput.ts";
import { CHANGES_LEAD, changeSentence, moreChanges, NO_CHANGES } from "./sentences.ts";

/** More changes than this are a list behind a summary, and are not drawn. */
const MOST_SHOWN = 12;
const MOST_LISTED = 200;
const LONGEST_NAME = 14;

/** Lines where a part was changed, with the new propeller or the part's name; none where they would fill the chart. */
export function fittingBreaks({ changes }: FlightsContext): readonly FlightBreak[] {
  if (changes.length > MOST_SHOWN) return [];
  return changes.map(({ place, part, to }) => ({
    place,
    words: part === "propeller" ? shortened(to, LONGEST_NAME).short : `new ${part}`,
  }));
}

/** Every change of a part in words. */
export function changesList(context: FlightsContext): Markup {
  const { changes } = context;
  if (changes.length === 0) return html`<p>${NO_CHANGES}</p>`;
  const items = changes.slice(-MOST_LISTED).map((change) => html`<li>${wordsOf(change, context)}</li>`);
  if (changes.length <= MOST_SHOWN) return html`<p>${CHANGES_LEAD}</p><ul>${items}</ul>`;
  return html`<details><summary>${moreChanges(changes.length)}</summary><ul>${items}</ul></details>`;
}

function wordsOf(change: FittingChange, { flights }: FlightsContext): string | Markup {
  const at = flights[change.place];
  return at === undefined ? NOTHING : changeSentence(change, flightReference(at));
}
