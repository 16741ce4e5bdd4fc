import type { Answers, CheckAnswer, MeasuredLog } from "../messages.ts";
import { button, element } from "./element.ts";
import { clientWords } from "./words.ts";

/** One log of this page. */
export interface Log {
  readonly file: File;
  readonly row: HTMLElement;
  readonly words: HTMLElement;
  answers: Answers | null;
  /** Null until it is read, and again when another aircraft was chosen. */
  answer: CheckAnswer | null;
  /** Of its bytes as they were read last; null before. */
  sha256: string | null;
  /** What it says of the parts of the aircraft as it is; null before, and again when a fact of it changed. */
  measured: MeasuredLog | null;
  /** What of the aircraft it was measured with; null without one. */
  measuredWith: string | null;
  /** True while it waits to be measured again, which its row does not say. */
  isMeasuring: boolean;
  /** Counts the times it was asked about: an answer to an earlier one is out of date. */
  turn: number;
  /** How many flights or runs it holds; null before it is read. */
  flights: number | null;
  /** What became of it in the logbook; null before, and again when its flights are taken out. */
  kept: { readonly sha256: string; readonly words: string } | null;
}

/** A log that was not read yet, with its row: its name, which chooses it, and how it stands with it. */
export function logOf(file: File, choose: () => void): Log {
  const words = element("span", { class: "state" }, clientWords.waiting);
  const row = element("li", {}, button(file.name, choose), " ", words);
  const unread = { answers: null, answer: null, sha256: null, flights: null, kept: null };
  const unmeasured = { measured: null, measuredWith: null, isMeasuring: false };
  return { file, row, words, turn: 0, ...unread, ...unmeasured };
}

export function isBusy({ words }: Log): boolean {
  return words.dataset.state === "busy";
}

export function hasFailed({ words }: Log): boolean {
  return words.dataset.state === "failed";
}

/** What an answer says of the parts. */
export function measuredIn({ check }: CheckAnswer): MeasuredLog {
  const flights = check.flights.map(({ kind, complete, measures, isChargeDoubtful }) => ({
    kind,
    complete,
    measures,
    ...(isChargeDoubtful && { isChargeDoubtful }),
  }));
  return { sha256: check.log.sha256, file: check.log.file, flights };
}

/** Says how it stands with a log, beside its name. */
export function say({ row, words }: Log, state: "busy" | "done" | "failed", text: string): void {
  words.textContent = text;
  words.dataset.state = state;
  row.querySelector("progress")?.remove();
}

/** How far the reading of a log has come, from 0 to 1. */
export function sayProgress(log: Log, text: string, share: number): void {
  say(log, "busy", text);
  log.words.after(" ", element("progress", { "aria-label": text, value: String(share) }));
}

/** What became of a log, in a few words. */
export function stateWords({ check, isRemembered }: CheckAnswer): string {
  const severities = check.log.notices.map(({ severity }) => severity);
  if (severities.includes("refusal")) return clientWords.unusable;
  if (severities.includes("question")) return clientWords.asks;
  const runs = check.flights.filter(({ kind }) => kind === "benchRun").length;
  return clientWords.found(check.flights.length - runs, runs, isRemembered);
}
