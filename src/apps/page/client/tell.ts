import { reasonOf } from "../reasonOf.ts";
import { CoreError } from "./core.ts";
import { placeOf } from "./element.ts";
import { pageWords } from "./pageWords.ts";
import { clientWords } from "./words.ts";

/** Says what happened, once, to eyes and to a screen reader. */
export function tell(words: string): void {
  placeOf("status").textContent = words;
}

/** What the page cannot do; the text is for the user. */
export class PageError extends Error {}

/** Why something failed, in the page's own words. */
export function whyFailed(error: unknown): string {
  const reason = pageWords(reasonOf(error));
  // A file that cannot be read, or a browser that refuses something, is no fault of the page.
  const isExpected =
    error instanceof CoreError
      ? error.isExpected
      : error instanceof PageError || error instanceof DOMException;
  return isExpected ? reason : clientWords.ownFault(reason);
}

/** Does what nobody waits for; where it fails, the page says why. */
export function inBackground(work: () => Promise<unknown>): void {
  work().catch((error: unknown) => tell(whyFailed(error)));
}
