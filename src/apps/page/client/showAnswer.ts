import type { Shown, Stoppable } from "../messages.ts";
import { noticeItems } from "./notices.ts";
import { showView } from "./showReport.ts";

/** Shows an answer, or what stands in its place. */
export function showAnswer(place: HTMLElement, { result, notices, view }: Stoppable<unknown> & Shown): void {
  if (result === null) place.replaceChildren(noticeItems(notices));
  else showView(place, view);
}
