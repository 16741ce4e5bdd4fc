import type { AircraftInBook, AircraftKeysAnswer, EditAircraftAnswer } from "../messages.ts";
import { AircraftDraft } from "./aircraftDraft.ts";
import { type AircraftForm, aircraftForm } from "./aircraftForm.ts";
import type { CountedLogs } from "./countedLogs.ts";
import { download } from "./download.ts";
import { button, element, inputOf, pause, placeOf, settled } from "./element.ts";
import type { Logs } from "./logs.ts";
import { noticeItems } from "./notices.ts";
import type { Session } from "./session.ts";
import { showPrediction } from "./showAnswer.ts";
import { inBackground, tell } from "./tell.ts";
import { clientWords } from "./words.ts";

/** Longest wait of a plan for the logs that it rests on; what is read later makes it anew. */
const MOST_MEASURING_MS = 1500;

/** The place of the aircraft file: a form by question beside what it means for the plan. */
export class AircraftPlace {
  readonly #session: Session;
  readonly #logs: Logs;
  readonly #counted: CountedLogs;
  #keys: AircraftKeysAnswer | null = null;
  #form: AircraftForm | null = null;
  readonly #draft: AircraftDraft;
  #drawTurn = 0;
  #planTurn = 0;
  /** The plan waits for logs: it is made when they are read. */
  #isMeasuring = false;
  readonly #planAgain = settled(() => inBackground(() => this.#plan()));
  readonly #settle = settled(() => inBackground(() => this.#draft.write()));

  constructor(session: Session, logs: Logs, counted: CountedLogs) {
    this.#session = session;
    this.#logs = logs;
    this.#counted = counted;
    this.#draft = new AircraftDraft(session, (answer) => this.#heard(answer));
    session.places.add("aircraft", {
      enter: () => inBackground(() => this.#enter()),
      leave: () => this.#leave(),
    });
    session.onUnits(() => inBackground(() => this.#redraw()));
    logs.onRead(() => {
      if (!this.#isMeasuring) this.#planAgain();
    });
    const input = inputOf("aircraft-input");
    placeOf("choose-aircraft").addEventListener("click", () => input.click());
    input.addEventListener("change", () => {
      const file = input.files?.[0];
      input.value = "";
      if (file !== undefined) inBackground(() => this.take(file));
    });
    const wire = (id: string, act: () => Promise<void>) =>
      placeOf(id).addEventListener("click", () => inBackground(act));
    wire("new-aircraft", () => this.#startNew());
    wire("save-aircraft", () => this.#save());
    wire("keep-aircraft", () => this.#keep());
  }

  /** Takes an aircraft file in, or says why it cannot be used; what was there before stays then. */
  async take(file: File): Promise<void> {
    const isTaken = await this.#takeText(await file.text(), file.name);
    if (isTaken && this.#session.places.open === "log")
      tell(clientWords.heldAgainst(this.#session.aircraft?.name ?? ""));
  }

  /** Opens the only aircraft of a book by itself. */
  async openFromBook(): Promise<void> {
    const kept = await this.#session.aircraftOfBook();
    const [only] = kept;
    if (only !== undefined && kept.length === 1) await this.#takeKept(only);
  }

  #takeKept({ text, path }: AircraftInBook): Promise<boolean> {
    return this.#takeText(text, path.split("/").at(-1) ?? "");
  }

  async #takeText(text: string, file: string): Promise<boolean> {
    const answer = await this.#session.core.ask({ kind: "aircraft", text, file });
    const { name, notices, measuring } = answer;
    placeOf("aircraft-refused").replaceChildren(...(notices.length === 0 ? [] : [noticeItems(notices)]));
    if (name === null) {
      if (this.#session.places.open === "log") tell(notices[0]?.text ?? "");
      return false;
    }
    this.#draft.forget();
    this.#session.aircraft = { name, text, file, takenAs: name, measuring };
    await this.#redraw();
    return true;
  }

  async #startNew(): Promise<void> {
    const { starter } = await this.#allKeys();
    await this.#takeText(starter, "aircraft.json");
    tell(clientWords.newAircraft);
  }

  async #allKeys(): Promise<AircraftKeysAnswer> {
    this.#keys ??= await this.#session.core.ask({ kind: "aircraftKeys" });
    return this.#keys;
  }

  async #enter(): Promise<void> {
    await Promise.all([this.#redraw(), this.#showKept()]);
  }

  async #showKept(): Promise<void> {
    const kept = await this.#session.aircraftOfBook();
    const buttons = kept.map((one) => button(one.name, () => inBackground(() => this.#takeKept(one))));
    const lead = element("p", {}, "In the logbook:");
    placeOf("aircraft-kept").replaceChildren(
      ...(buttons.length === 0 ? [] : [lead, element("div", { class: "buttons" }, ...buttons)]),
    );
  }

  #leave(): void {
    placeOf("plan").replaceChildren();
    placeOf("plan-now").textContent = "";
  }

  async #redraw(): Promise<void> {
    const { aircraft, core, places, units } = this.#session;
    if (places.open !== "aircraft") return;
    if (aircraft === null) {
      placeOf("aircraft-form").replaceChildren(element("p", { class: "empty" }, clientWords.emptyAircraft));
      return;
    }
    this.#drawTurn += 1;
    const turn = this.#drawTurn;
    const { text, file } = aircraft;
    const [{ keys }, { values, notices }] = await Promise.all([
      this.#allKeys(),
      core.ask({ kind: "editAircraft", text, file, changes: this.#draft.changes }),
    ]);
    if (turn !== this.#drawTurn) return;
    const form = aircraftForm(keys, { ...values, ...this.#draft.changes }, units, (path, value) => {
      this.#draft.type(path, value);
      this.#settle();
    });
    this.#form = form;
    placeOf("aircraft-form").replaceChildren(form.root);
    for (const id of ["save-aircraft", "keep-aircraft", "units-choice"]) placeOf(id).hidden = false;
    form.faults(notices);
    await this.#plan();
  }

  /** What was written, or what is wrong with it. */
  async #heard({ name, notices }: EditAircraftAnswer): Promise<void> {
    this.#form?.faults(notices);
    if (name === null) placeOf("plan-now").textContent = clientWords.planWaits;
    else await this.#plan();
  }

  /** The plan from the book's flights and the logs on the page, which a change of a fact has measured anew. */
  async #plan(): Promise<void> {
    if (this.#session.aircraft === null || this.#session.places.open !== "aircraft") return;
    this.#planTurn += 1;
    const turn = this.#planTurn;
    this.#isMeasuring = true;
    await Promise.race([this.#logs.measureAgain(), pause(MOST_MEASURING_MS)]);
    if (turn !== this.#planTurn) return;
    this.#isMeasuring = false;
    await this.#planNow(turn);
  }

  async #planNow(turn: number): Promise<void> {
    const { aircraft, core, units } = this.#session;
    if (aircraft === null) return;
    const { text, file } = aircraft;
    const conditions = { ambientC: null, elevationM: null };
    const logs = this.#counted.measured();
    const own = { kind: "plan", aircraft: { text, file }, withBook: true, logs, conditions, units } as const;
    const answer = await core.ask(own);
    if (turn !== this.#planTurn || this.#session.places.open !== "aircraft") return;
    placeOf("plan-now").textContent = answer.result?.text ?? "";
    showPrediction(placeOf("plan"), answer, this.#counted, () => inBackground(() => this.#plan()));
  }

  /** Waits until all that was typed is in the session's text; false, and said, where a line is wrong. */
  async #isAllWritten(): Promise<boolean> {
    await this.#draft.write();
    const isRight = this.#draft.isWritten && this.#form?.isWrong() !== true;
    if (!isRight) tell(clientWords.correctFirst);
    return isRight;
  }

  async #save(): Promise<void> {
    if (!(await this.#isAllWritten())) return;
    const { aircraft } = this.#session;
    if (aircraft === null) return;
    const name = aircraft.file.endsWith(".json") ? aircraft.file : "aircraft.json";
    download(name, aircraft.text);
    tell(clientWords.savedAs(name));
  }

  async #keep(): Promise<void> {
    if (!(await this.#isAllWritten())) return;
    const { aircraft, core } = this.#session;
    if (aircraft === null) return;
    const { text, file } = aircraft;
    const { result, notices } = await core.ask({ kind: "keepAircraft", text, file });
    tell(result === null ? (notices[0]?.text ?? "") : clientWords.keptAircraft(result.name));
  }
}
