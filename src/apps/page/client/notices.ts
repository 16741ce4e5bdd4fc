import type { Notice } from "../../../base/notices/index.ts";
import { element } from "./element.ts";
import { pageWords } from "./pageWords.ts";

/** What the core had to say, in the page's own words. */
export function noticeItems(notices: readonly Notice[]): HTMLElement {
  const items = notices.map(({ text }) => element("li", { class: "notice" }, pageWords(text)));
  return element("ul", { class: "notices" }, ...items);
}
