import type { PlanAnswer, Shown, Stoppable, SwapAnswer } from "../messages.ts";
import type { CountedLogs } from "./countedLogs.ts";
import { noticeItems } from "./notices.ts";
import { showView } from "./showReport.ts";

/** Shows an answer, or what stands in its place. */
export function showAnswer(place: HTMLElement, { result, notices, view }: Stoppable<unknown> & Shown): void {
  if (result === null) place.replaceChildren(noticeItems(notices));
  else showView(place, view);
}

/** The same for what is predicted, with the flights that it rests on; `again` is called when others are chosen. */
export function showPrediction(
  place: HTMLElement,
  answer: PlanAnswer | SwapAnswer,
  counted: CountedLogs,
  again: () => void,
): void {
  const focused = place.querySelector<HTMLElement>("[data-log]:focus")?.dataset.log;
  showAnswer(place, answer);
  if (answer.result === null) return;
  place.append(...counted.show(answer.flights, again));
  if (focused !== undefined) place.querySelector<HTMLElement>(`[data-log="${focused}"]`)?.focus();
}
