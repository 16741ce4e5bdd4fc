import { NOTHING_GIVEN } from "../../../season/logbook/index.ts";
import type { AddAnswer } from "../messages.ts";
import { button, element, placeOf } from "./element.ts";
import { type FactsForm, factsForm } from "./factsForm.ts";
import type { Log } from "./logRow.ts";
import type { Logs } from "./logs.ts";
import { noticeItems } from "./notices.ts";
import type { Session } from "./session.ts";
import { inBackground, tell, whyFailed } from "./tell.ts";
import { clientWords } from "./words.ts";

/** Keeps the log in view, or all that were read, with what the pilot says of them. */
export class KeepPanel {
  readonly #session: Session;
  readonly #logs: Logs;
  #log: Log | null = null;
  #form: FactsForm | null = null;
  #all: HTMLButtonElement | null = null;
  /** What the panel was drawn from. */
  #drawn: readonly unknown[] = [];

  constructor(session: Session, logs: Logs) {
    this.#session = session;
    this.#logs = logs;
    session.onAircraft(() => this.#draw());
    session.onBook(() => inBackground(() => this.#forgetGone()));
    logs.onRead(() => this.#sayAll());
  }

  show(log: Log): void {
    this.#log = log;
    this.#draw();
  }

  /** Only what changed is drawn anew: what the pilot typed stays. */
  #draw(): void {
    const log = this.#log;
    const { aircraft, units } = this.#session;
    const isShown = log !== null && (log.flights ?? 0) > 0;
    const state = isShown ? [log, log.kept, aircraft === null, units] : [];
    if (state.length === this.#drawn.length && state.every((one, at) => one === this.#drawn[at])) return;
    this.#drawn = state;
    placeOf("keep").replaceChildren(...(isShown ? [this.#panel(log)] : []));
  }

  #panel(log: Log): HTMLElement {
    if (log.kept !== null) return element("p", { class: "kept" }, log.kept.words);
    const body = this.#session.aircraft === null ? this.#withoutAircraft() : this.#facts(log);
    return element("details", { class: "sheet" }, element("summary", {}, clientWords.keepTitle), ...body);
  }

  #withoutAircraft(): readonly HTMLElement[] {
    const choose = button("Choose an aircraft", () => this.#session.places.go("aircraft"));
    return [element("p", {}, clientWords.keepNeedsAircraft), choose];
  }

  #facts(log: Log): readonly HTMLElement[] {
    const form = factsForm(NOTHING_GIVEN, [], this.#session.units);
    this.#form = form;
    const keep = button(clientWords.keep, () => inBackground(() => this.#keep([log], false)));
    const all = button("", () => inBackground(() => this.#keep(this.#logs.all, false, true)));
    this.#all = all;
    this.#sayAll();
    const buttons = element("div", { class: "buttons" }, keep, all);
    const said = element("div", { class: "said", id: "keep-said" });
    return [element("p", {}, clientWords.keepLead), form.root, buttons, said];
  }

  /** Offers to keep all as soon as more than one was read. */
  #sayAll(): void {
    const count = this.#logs.all.filter(isToKeep).length;
    if (this.#all === null) return;
    this.#all.textContent = clientWords.keepAll(count);
    this.#all.hidden = count < 2;
  }

  /** Of several logs only what they share is taken from the form: a put-back or a time is of one flight. */
  async #keep(logs: readonly Log[], isAgain: boolean, isShared = false): Promise<void> {
    const own = this.#form?.read() ?? null;
    const given =
      own === null || !isShared ? own : { ...own, putBackMah: null, flownS: null, startPct: null };
    const { aircraft, core } = this.#session;
    if (given === null || aircraft === null) return tell(clientWords.correctFirst);
    const left = logs.filter(isToKeep);
    const run = `page-${crypto.getRandomValues(new Uint32Array(2)).join("-")}`;
    const counts = { added: 0, already: 0, stopped: 0 };
    for (const [at, log] of left.entries()) {
      tell(clientWords.keeping(log.file.name, at + 1, left.length));
      try {
        const bytes = await log.file.arrayBuffer();
        const { text, file } = aircraft;
        const work = { kind: "add", file: log.file.name, bytes, aircraft: { text, file }, given } as const;
        const answer = await core.ask({ ...work, answers: log.answers, chargedWith: [], isAgain, run });
        const { outcome } = answer;
        if (outcome.state === "stopped") counts.stopped += 1;
        else counts[outcome.state] += outcome.flights.length;
        this.#say(log, answer);
      } catch (error) {
        counts.stopped += 1;
        log.words.textContent = whyFailed(error);
      }
    }
    tell(clientWords.keptAll(counts.added, counts.already, counts.stopped));
  }

  /** A log whose flights were taken out of the logbook can be kept again; one kept meanwhile is not in this list. */
  async #forgetGone(): Promise<void> {
    const before = this.#logs.all.map(({ kept }) => kept);
    const { logs } = await this.#session.core.ask({ kind: "list", aircraft: null });
    for (const [at, kept] of before.entries()) {
      const log = this.#logs.all[at];
      if (log === undefined || kept === null || log.kept !== kept || logs.includes(kept.sha256)) continue;
      log.kept = null;
      log.words.textContent = clientWords.keptNoMore;
    }
    this.#draw();
  }

  #say(log: Log, { outcome, sha256 }: AddAnswer): void {
    if (outcome.state !== "stopped") {
      const { state, flights } = outcome;
      log.kept = {
        sha256,
        words: state === "added" ? clientWords.kept(flights) : clientWords.already(flights),
      };
      log.words.textContent = clientWords.keptShort(flights);
      if (log === this.#log) this.#draw();
      return;
    }
    log.words.textContent = outcome.notices[0]?.text ?? "";
    if (log !== this.#log) return;
    const again = outcome.notices.some(({ code }) => code === "same-flight")
      ? [button(clientWords.addAgain, () => inBackground(() => this.#keep([log], true)))]
      : [];
    placeOf("keep-said").replaceChildren(noticeItems(outcome.notices), ...again);
  }
}

function isToKeep({ kept, flights }: Log): boolean {
  return kept === null && flights !== null && flights > 0;
}
