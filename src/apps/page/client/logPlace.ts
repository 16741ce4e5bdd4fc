import { type Answers, type CheckAnswer, NO_ANSWERS } from "../messages.ts";
import { droppedFiles } from "./droppedFiles.ts";
import { button, element, inputOf, placeOf } from "./element.ts";
import { KeepPanel } from "./keepPanel.ts";
import type { Log } from "./logRow.ts";
import type { Logs } from "./logs.ts";
import { columnsPanel } from "./question.ts";
import type { Session } from "./session.ts";
import { clearReport, showReport } from "./showReport.ts";
import { inBackground, tell } from "./tell.ts";
import { unitsNote } from "./unitsChoice.ts";
import { clientWords } from "./words.ts";

/** The place where logs are dropped, questions asked and reports shown. */
export function logPlace(session: Session, logs: Logs, takeAircraft: (file: File) => Promise<void>): void {
  logs.onShow(show);
  const keep = new KeepPanel(session, logs);
  const take = (files: readonly File[]): void => {
    const aircraft = files.filter(({ name }) => /\.json$/i.test(name));
    const other = files.filter((file) => !aircraft.includes(file));
    if (files.length === 0) tell(clientWords.noFiles);
    inBackground(async () => {
      // An aircraft file that fails is said; the logs that came with it are read all the same.
      const taken = await Promise.allSettled(aircraft.map(takeAircraft));
      if (other.length > 0) {
        if (session.places.open !== "log") session.places.go("log");
        logs.add(other);
      }
      for (const one of taken) if (one.status === "rejected") throw one.reason;
    });
  };
  session.places.add("log", {
    enter: () => logs.showOpen(),
    leave: () => clearReport(placeOf("report")),
  });
  session.onAircraft(() => sayAircraft(session));
  sayAircraft(session);
  wire("choose-logs", "logs-input", take);
  wire("choose-folder", "folder-input", take);
  listenForDrops(take);

  function show(log: Log): void {
    const { answer } = log;
    if (answer === null) return;
    placeOf("question").replaceChildren(questionPanel(log, (answers) => logs.answered(log, answers)));
    keep.show(log);
    // A question says all that a report without numbers would.
    const isReported = !isAsking(answer);
    placeOf("report-units").replaceChildren(...(isReported ? unitsNote(session.units) : []));
    if (!isReported) clearReport(placeOf("report"));
    else inBackground(() => showReport(placeOf("report"), answer.report));
  }
}

function questionPanel(log: Log, answer: (answers: Answers) => void): HTMLElement {
  const checked = log.answer;
  if (checked === null) return element("div");
  const panel = columnsPanel(checked, log.answers, (answers) => answer({ ...NO_ANSWERS, ...answers }));
  if (isAsking(checked))
    return element("section", { class: "asks" }, element("h2", {}, clientWords.questionTitle), panel);
  if (checked.columns.length === 0) return element("div");
  return element("details", {}, element("summary", {}, clientWords.columnsTitle), panel);
}

function isAsking({ check, columns }: CheckAnswer): boolean {
  const isAsked = check.log.notices.some(({ severity }) => severity === "question");
  return isAsked && check.flights.length === 0 && columns.length > 0;
}

function sayAircraft(session: Session): void {
  const { aircraft, places } = session;
  const words = aircraft === null ? clientWords.noAircraft : clientWords.heldAgainst(aircraft.name);
  const change = button(aircraft === null ? "Choose an aircraft" : "Change it", () => places.go("aircraft"));
  placeOf("held").replaceChildren(words, " ", change);
}

function wire(buttonId: string, inputId: string, take: (files: readonly File[]) => void): void {
  const input = inputOf(inputId);
  placeOf(buttonId).addEventListener("click", () => input.click());
  input.addEventListener("change", () => {
    const files = [...(input.files ?? [])];
    input.value = "";
    if (files.length > 0) take(files);
  });
}

function listenForDrops(take: (files: readonly File[]) => void): void {
  const mark = (isOver: boolean): void => {
    document.body.classList.toggle("over", isOver);
  };
  document.addEventListener("dragover", (event) => {
    event.preventDefault();
    mark(true);
  });
  document.addEventListener("dragleave", (event) => {
    if (event.relatedTarget === null) mark(false);
  });
  document.addEventListener("drop", (event) => {
    event.preventDefault();
    mark(false);
    if (event.dataTransfer === null) return;
    const { dataTransfer } = event;
    inBackground(async () => take(await droppedFiles(dataTransfer)));
  });
}
