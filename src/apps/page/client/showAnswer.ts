import type { PlanAnswer, Shown, Stoppable, SwapAnswer } from "../messages.ts";
import { element } from "./element.ts";
import { noticeItems } from "./notices.ts";
import { showView } from "./showReport.ts";
import { clientWords } from "./words.ts";

/** Shows an answer, or what stands in its place. */
export function showAnswer(place: HTMLElement, { result, notices, view }: Stoppable<unknown> & Shown): void {
  if (result === null) place.replaceChildren(noticeItems(notices));
  else showView(place, view);
}

/** The same for what is predicted, with the flights that it rests on. */
export function showPrediction(place: HTMLElement, answer: PlanAnswer | SwapAnswer): void {
  showAnswer(place, answer);
  const { inBook, inLogs } = answer.flights;
  if (answer.result !== null)
    place.append(element("p", { class: "quiet" }, clientWords.predictedFrom(inBook, inLogs)));
}
