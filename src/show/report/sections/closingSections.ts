import { MEASURE_NAMES } from "../../../flight/analysis/index.ts";
import type { CheckedLogWithRows } from "../../../flight/check/index.ts";
import { html, type Markup } from "../../charts/index.ts";
import { MEASURE_METHODS, measureTitle } from "../measureMethods.ts";
import {
  BASIS_METHOD,
  CAUTIONS,
  digestWords,
  INTERVAL_METHOD,
  NOT_A_PROMISE,
  REPAIR_METHOD,
  releaseWords,
  THINNING_METHOD,
} from "../sentences.ts";

/** Cautions: hazard, what it can do, how to avoid it; and what the page does not promise. */
export function cautionsSection(noPromise = NOT_A_PROMISE): Markup {
  const items = CAUTIONS.map(
    ({ word, about, hazard, consequence, avoid }) =>
      html`<li><h3><span class="signal">${word}</span> ${about}</h3><p>${hazard} ${consequence} <b>${avoid}</b></p></li>`,
  );
  return html`<section aria-labelledby="cautions"><h2 id="cautions">Cautions</h2><ul class="cautions">${items}</ul><p>${noPromise}</p></section>`;
}

/** How the numbers came about, with published sources. */
export function methodsSection(): Markup {
  const general = [INTERVAL_METHOD, BASIS_METHOD, THINNING_METHOD, REPAIR_METHOD].map(
    (text) => html`<li>${text}</li>`,
  );
  const items = MEASURE_NAMES.map((name) => {
    const { meaning, source } = MEASURE_METHODS[name];
    return html`<dt>${measureTitle(name)}</dt><dd>${meaning}${source === null ? "" : ` Source: ${source}.`}</dd>`;
  });
  return html`<section aria-labelledby="methods"><h2 id="methods">Methods and sources</h2><ul>${general}</ul><dl class="pairs">${items}</dl></section>`;
}

export function footer({ check }: CheckedLogWithRows, release: string): Markup {
  return html`<footer><p>${releaseWords(release)} ${check.log.file}</p><p class="digest">${digestWords(check.log.sha256)}</p></footer>`;
}
