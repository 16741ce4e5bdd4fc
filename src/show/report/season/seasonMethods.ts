import { html, type Markup } from "../../charts/index.ts";
import { BASIS_METHOD, INTERVAL_METHOD } from "../sentences.ts";
import { CAUTIOUS_METHOD, GROUP_METHOD, SHIFT_METHOD, TIMER_METHOD, TREND_METHOD } from "./sentences.ts";

const METHODS: readonly string[] = [
  INTERVAL_METHOD,
  BASIS_METHOD,
  TIMER_METHOD,
  CAUTIOUS_METHOD,
  TREND_METHOD,
  SHIFT_METHOD,
  GROUP_METHOD,
];

/** How the season's numbers came about, with published sources. */
export function seasonMethods(): Markup {
  const items = METHODS.map((text) => html`<li>${text}</li>`);
  return html`<section aria-labelledby="methods"><h2 id="methods">Methods and sources</h2><ul>${items}</ul></section>`;
}
