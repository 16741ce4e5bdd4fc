import type { Answers, CheckAnswer } from "../messages.ts";
import type { Tell } from "./core.ts";
import { placeOf } from "./element.ts";
import { hasFailed, isBusy, type Log, logOf, measuredIn, say, sayProgress, stateWords } from "./logRow.ts";
import type { Session } from "./session.ts";
import { inBackground, tell, whyFailed } from "./tell.ts";
import { clientWords } from "./words.ts";

/** Reports are large: only this many are held at once, the others are read again when chosen. */
const MOST_HELD = 12;

/** The logs of the page: read one after the other, the chosen one shown as soon as it is read. */
export class Logs {
  readonly all: Log[] = [];
  readonly #session: Session;
  readonly #onRead: (() => void)[] = [];
  #show: (log: Log) => void = () => {};
  #open: Log | null = null;
  /** True once the user chose a log: from then on no other is opened by itself. */
  #isChosen = false;
  #queue: Promise<void> = Promise.resolve();

  constructor(session: Session) {
    this.#session = session;
    session.onAircraft(() => this.#forgetAnswers());
  }

  /** Shows the log in view whenever its answer is there. */
  onShow(show: (log: Log) => void): void {
    this.#show = show;
  }

  /** Hears of every log that was read. */
  onRead(act: () => void): void {
    this.#onRead.push(act);
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
    else if (!isBusy(log)) this.#enqueue(log, 1, 1);
  }

  answered(log: Log, answers: Answers): void {
    log.answers = answers;
    this.#open = log;
    this.#enqueue(log, 1, 1);
  }

  /**
   * Reads the logs again that were measured with other facts, without a word; resolves when all is read. A log
   * that failed waits to be chosen.
   */
  measureAgain(): Promise<void> {
    const left = this.all.filter((log) => log.measured === null && (log.flights ?? 0) > 0 && !hasFailed(log));
    for (const log of left) if (!isBusy(log) && !log.isMeasuring) this.#measure(log);
    return left.length > 0 ? this.#queue : Promise.resolve();
  }

  #forgetAnswers(): void {
    for (const log of this.all) {
      const isInView = log === this.#open && this.#session.places.open === "log";
      log.answer = null;
      if (log.measuredWith !== this.#measuringNow()) log.measured = null;
      // What is on its way was asked with the aircraft as it was: it must be neither shown nor kept.
      if (isBusy(log) || isInView) this.#enqueue(log, 1, 1);
      else this.#nextTurn(log, false);
    }
  }

  #logOf(file: File): Log {
    const log = logOf(file, () => {
      this.choose(log);
      if (log.answer !== null) placeOf("report").focus();
    });
    placeOf("logs").append(log.row);
    this.all.push(log);
    return log;
  }

  #measuringNow(): string | null {
    return this.#session.aircraft?.measuring ?? null;
  }

  #nextTurn(log: Log, isMeasuring: boolean): number {
    log.turn += 1;
    log.isMeasuring = isMeasuring;
    return log.turn;
  }

  #enqueue(log: Log, at: number, of: number): void {
    const turn = this.#nextTurn(log, false);
    say(log, "busy", clientWords.waiting);
    this.#queue = this.#queue.then(async () => {
      if (log.turn === turn) await this.#check(log, turn, clientWords.reading(log.file.name, at, of));
    });
  }

  #measure(log: Log): void {
    const turn = this.#nextTurn(log, true);
    this.#queue = this.#queue.then(async () => {
      if (log.turn === turn) await this.#checkAgain(log, turn);
    });
  }

  async #check(log: Log, turn: number, words: string): Promise<void> {
    sayProgress(log, clientWords.beingRead, 0);
    tell(words);
    try {
      const answer = await this.#ask(log, ({ words: stage, share }) => {
        if (log.turn === turn) sayProgress(log, stage, share);
      });
      if (log.turn === turn) this.#take(log, answer);
    } catch (error) {
      if (log.turn !== turn) return;
      say(log, "failed", clientWords.failed(whyFailed(error)));
      tell(clientWords.outcome(log.file.name, log.words.textContent ?? ""));
    }
  }

  /** The same for what nobody asked for: only its row says what changed. */
  async #checkAgain(log: Log, turn: number): Promise<void> {
    try {
      const answer = await this.#ask(log);
      if (log.turn !== turn) return;
      const isOther = log.flights !== answer.check.flights.length;
      this.#hold(log, answer);
      if (isOther) say(log, "done", stateWords(answer));
      for (const act of this.#onRead) act();
    } catch (error) {
      if (log.turn === turn) say(log, "failed", clientWords.failed(whyFailed(error)));
    } finally {
      if (log.turn === turn) log.isMeasuring = false;
    }
  }

  async #ask(log: Log, hear?: Tell): Promise<CheckAnswer> {
    const { core, aircraft, remembered } = this.#session;
    const { file, answers } = log;
    const bytes = await file.arrayBuffer();
    const own = { kind: "check", file: file.name, bytes, aircraft: aircraft?.text ?? null } as const;
    return core.ask({ ...own, answers, remembered }, hear);
  }

  /** Keeps an answer to the aircraft as it is. */
  #hold(log: Log, answer: CheckAnswer): void {
    log.answer = answer;
    log.sha256 = answer.check.log.sha256;
    log.measured = measuredIn(answer);
    log.measuredWith = this.#measuringNow();
    log.flights = answer.check.flights.length;
    this.#noteAnswers(log, answer);
    this.#forgetOld(log);
  }

  #take(log: Log, answer: CheckAnswer): void {
    this.#hold(log, answer);
    say(log, "done", stateWords(answer));
    tell(clientWords.outcome(log.file.name, stateWords(answer)));
    this.#remember(log, answer);
    for (const act of this.#onRead) act();
    if (this.#open === log || (!this.#isChosen && this.#open?.answer == null)) {
      this.#open = log;
      this.#mark();
      if (this.#session.places.open === "log") this.#show(log);
    }
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
    if (aircraftToKeep !== null) inBackground(() => this.#session.keepText(aircraftToKeep));
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
