import type { Answers, CheckAnswer } from "../messages.ts";
import { button, element, placeOf } from "./element.ts";
import { type Session, tell } from "./session.ts";
import { clientWords } from "./words.ts";

/** One log of this page. */
export interface Log {
  readonly file: File;
  readonly row: HTMLElement;
  readonly words: HTMLElement;
  answers: Answers | null;
  /** Null until it is read, and again when another aircraft was chosen. */
  answer: CheckAnswer | null;
  /** Counts the times it was asked about: an answer to an earlier one is out of date. */
  turn: number;
  /** How many flights or runs it holds; null before it is read. */
  flights: number | null;
  /** What became of it in the logbook; null before. */
  kept: string | null;
}

/** Reports are large: only this many are held at once, the others are read again when chosen. */
const MOST_HELD = 12;

/** The logs of the page: read one after the other, the chosen one shown as soon as it is read. */
export class Logs {
  readonly all: Log[] = [];
  readonly #session: Session;
  readonly #show: (log: Log) => void;
  #open: Log | null = null;
  /** Hears of every log that was read. */
  onRead: () => void = () => {};
  /** True once the user chose a log: from then on no other is opened by itself. */
  #isChosen = false;
  #queue: Promise<void> = Promise.resolve();

  constructor(session: Session, show: (log: Log) => void) {
    this.#session = session;
    this.#show = show;
    session.onAircraft(() => this.forgetAnswers());
  }

  get open(): Log | null {
    return this.#open;
  }

  add(files: readonly File[]): void {
    const added = files.map((file) => this.#logOf(file));
    this.#isChosen = false;
    if (added[0] !== undefined) this.#open = added[0];
    added.forEach((log, at) => {
      this.#enqueue(log, at + 1, added.length);
    });
  }

  /** The log in view when the user comes back to it. */
  showOpen(): void {
    if (this.#open !== null) this.choose(this.#open);
  }

  choose(log: Log): void {
    this.#isChosen = true;
    this.#open = log;
    this.#mark();
    if (log.answer !== null) this.#show(log);
    else if (log.words.dataset.state !== "busy") this.#enqueue(log, 1, 1);
  }

  answered(log: Log, answers: Answers): void {
    log.answers = answers;
    this.#open = log;
    this.#enqueue(log, 1, 1);
  }

  forgetAnswers(): void {
    for (const log of this.all) {
      const isBusy = log.words.dataset.state === "busy";
      const isInView = log === this.#open && this.#session.places.open === "log";
      log.answer = null;
      // What is on its way was asked with the aircraft as it was: it must be neither shown nor kept.
      if (isBusy || isInView) this.#enqueue(log, 1, 1);
    }
  }

  #logOf(file: File): Log {
    const words = element("span", { class: "state" }, clientWords.waiting);
    const row = element("li", {});
    const log: Log = { file, row, words, answers: null, answer: null, turn: 0, flights: null, kept: null };
    const show = button(file.name, () => {
      this.choose(log);
      if (log.answer !== null) placeOf("report").focus();
    });
    row.append(show, " ", words);
    placeOf("logs").append(row);
    this.all.push(log);
    return log;
  }

  #enqueue(log: Log, at: number, of: number): void {
    log.turn += 1;
    const { turn } = log;
    say(log, "busy", clientWords.waiting);
    this.#queue = this.#queue.then(async () => {
      if (log.turn === turn) await this.#check(log, turn, clientWords.reading(log.file.name, at, of));
    });
  }

  async #check(log: Log, turn: number, words: string): Promise<void> {
    say(log, "busy", clientWords.beingRead);
    tell(words);
    try {
      const answer = await this.#ask(log);
      if (log.turn !== turn) return;
      log.answer = answer;
      log.flights = answer.check.flights.length;
      say(log, "done", stateWords(answer));
      tell(clientWords.outcome(log.file.name, stateWords(answer)));
      this.onRead();
      this.#remember(log, answer);
      this.#noteAnswers(log, answer);
      this.#forgetOld(log);
      if (this.#open === log || (!this.#isChosen && this.#open?.answer == null)) {
        this.#open = log;
        this.#mark();
        if (this.#session.places.open === "log") this.#show(log);
      }
    } catch (error) {
      say(log, "failed", clientWords.failed(error instanceof Error ? error.message : String(error)));
      tell(clientWords.outcome(log.file.name, log.words.textContent ?? ""));
    }
  }

  async #ask({ file, answers }: Log): Promise<CheckAnswer> {
    const { core, aircraft, remembered } = this.#session;
    const bytes = await file.arrayBuffer();
    const own = { kind: "check", file: file.name, bytes, aircraft: aircraft?.text ?? null } as const;
    return core.ask({ ...own, answers, remembered });
  }

  /** A log read by answers given for another of its header is kept by them too: what was shown is what is added. */
  #noteAnswers(log: Log, { check }: CheckAnswer): void {
    const signature = check.log.headerSignature;
    if (signature !== null) log.answers ??= this.#session.remembered[signature] ?? null;
  }

  /** An answer that led to flights serves the next log of that header, and goes into the aircraft file. */
  #remember({ answers }: Log, { check, aircraftToKeep }: CheckAnswer): void {
    const signature = check.log.headerSignature;
    if (answers === null || check.flights.length === 0 || signature === null) return;
    this.#session.remembered[signature] = answers;
    if (aircraftToKeep !== null) void this.#session.keepText(aircraftToKeep);
  }

  #forgetOld(last: Log): void {
    const held = this.all.filter((log) => log.answer !== null && log !== last && log !== this.#open);
    for (const log of held.slice(0, Math.max(0, held.length - MOST_HELD))) log.answer = null;
  }

  #mark(): void {
    for (const { row } of this.all) row.firstElementChild?.removeAttribute("aria-current");
    this.#open?.row.firstElementChild?.setAttribute("aria-current", "true");
  }
}

function say({ row, words }: Log, state: "busy" | "done" | "failed", text: string): void {
  words.textContent = text;
  words.dataset.state = state;
  row.querySelector("progress")?.remove();
  if (state === "busy" && text === clientWords.beingRead) {
    words.after(" ", element("progress", { "aria-label": text }));
  }
}

function stateWords({ check, isRemembered }: CheckAnswer): string {
  const severities = check.log.notices.map(({ severity }) => severity);
  if (severities.includes("refusal")) return clientWords.unusable;
  if (severities.includes("question")) return clientWords.asks;
  return clientWords.found(check.flights.length, isRemembered);
}
