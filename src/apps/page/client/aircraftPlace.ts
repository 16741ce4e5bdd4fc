import type { AircraftKey, AircraftValues } from "../../../aircraft/index.ts";
import type { AircraftKeysAnswer } from "../messages.ts";
import { type AircraftForm, aircraftForm } from "./aircraftForm.ts";
import { download } from "./download.ts";
import { button, element, inputOf, placeOf, settled } from "./element.ts";
import type { KeyValue } from "./keyField.ts";
import { noticeItems } from "./notices.ts";
import { type Session, tell } from "./session.ts";
import { showView } from "./showReport.ts";
import { clientWords } from "./words.ts";

/** Pause in typing after which the plan is made anew, ms. */
const TYPING_MS = 200;

/** The place of the aircraft file: a form by question beside what it means for the plan. */
export class AircraftPlace {
  readonly #session: Session;
  #keys: AircraftKeysAnswer | null = null;
  /** The text as typed so far, which may be wrong; the session holds the last right one. */
  #draft: { text: string; file: string } | null = null;
  #form: AircraftForm | null = null;
  #changes: Record<string, KeyValue> = {};
  #turn = 0;
  readonly #settle = settled(TYPING_MS, () => void this.#apply());

  constructor(session: Session) {
    this.#session = session;
    session.places.add("aircraft", { enter: () => void this.#enter(), leave: () => this.#leave() });
    session.onUnits(() => void this.#redraw());
    const input = inputOf("aircraft-input");
    placeOf("choose-aircraft").addEventListener("click", () => input.click());
    input.addEventListener("change", () => {
      const file = input.files?.[0];
      input.value = "";
      if (file !== undefined) void this.take(file);
    });
    placeOf("new-aircraft").addEventListener("click", () => void this.#startNew());
    placeOf("save-aircraft").addEventListener("click", () => this.#save());
    placeOf("keep-aircraft").addEventListener("click", () => void this.#keep());
  }

  /** Takes an aircraft file in, or says why it cannot be used; what was there before stays then. */
  async take(file: File): Promise<void> {
    await this.#takeText(await file.text(), file.name);
    if (this.#session.places.open === "log")
      tell(clientWords.heldAgainst(this.#session.aircraft?.name ?? ""));
  }

  /** Opens the only aircraft of a book by itself. */
  async openFromBook(): Promise<void> {
    const kept = await this.#session.aircraftOfBook();
    const [only] = kept;
    if (only !== undefined && kept.length === 1)
      await this.#takeText(only.text, only.path.split("/").at(-1) ?? "");
  }

  async #takeText(text: string, file: string): Promise<void> {
    const { name, notices } = await this.#session.core.ask({ kind: "aircraft", text, file });
    placeOf("aircraft-refused").replaceChildren(...(notices.length === 0 ? [] : [noticeItems(notices)]));
    if (name === null) {
      if (this.#session.places.open === "log") tell(notices[0]?.text ?? "");
      return;
    }
    this.#draft = { text, file };
    this.#changes = {};
    this.#session.aircraft = { name, text, file };
    if (this.#session.places.open === "aircraft") await this.#redraw();
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
    const kept = await this.#session.aircraftOfBook();
    const buttons = kept.map(({ name, text, path }) =>
      button(name, () => void this.#takeText(text, path.split("/").at(-1) ?? "")),
    );
    const lead = element("p", {}, "In the logbook:");
    placeOf("aircraft-kept").replaceChildren(
      ...(buttons.length === 0 ? [] : [lead, element("div", { class: "buttons" }, ...buttons)]),
    );
    await this.#redraw();
  }

  #leave(): void {
    placeOf("plan").replaceChildren();
    placeOf("plan-now").textContent = "";
  }

  async #redraw(): Promise<void> {
    const { aircraft, core, places, units } = this.#session;
    if (places.open !== "aircraft" || aircraft === null) return;
    // An answer kept meanwhile is in the session's text, not in the draft.
    if (Object.keys(this.#changes).length === 0) this.#draft = { text: aircraft.text, file: aircraft.file };
    const { text, file } = this.#draft ?? aircraft;
    const [{ keys }, { values, notices }] = await Promise.all([
      this.#allKeys(),
      core.ask({ kind: "editAircraft", text, file, changes: {} }),
    ]);
    this.#draw(keys, values, units);
    this.#form?.faults(notices);
    await this.#plan();
  }

  #draw(keys: readonly AircraftKey[], values: AircraftValues, units: Session["units"]): void {
    const form = aircraftForm(keys, values, units, (path, value) => {
      this.#changes[path] = value;
      this.#settle();
    });
    this.#form = form;
    placeOf("aircraft-form").replaceChildren(form.root);
    for (const id of ["save-aircraft", "keep-aircraft", "units-choice"]) placeOf(id).hidden = false;
  }

  /** Writes what was typed into the text and makes the plan anew, when every value may be. */
  async #apply(): Promise<void> {
    if (this.#draft === null) return;
    const changes = this.#changes;
    this.#changes = {};
    const { file } = this.#draft;
    const answer = await this.#session.core.ask({ kind: "editAircraft", ...this.#draft, changes });
    this.#draft = { text: answer.text, file };
    this.#form?.faults(answer.notices);
    if (answer.name === null) {
      placeOf("plan-now").textContent = clientWords.planWaits;
      return;
    }
    this.#session.aircraft = { name: answer.name, text: answer.text, file };
    await this.#plan();
  }

  async #plan(): Promise<void> {
    const { aircraft, core, units } = this.#session;
    if (aircraft === null) return;
    this.#turn += 1;
    const turn = this.#turn;
    const { text, file } = aircraft;
    const conditions = { ambientC: null, elevationM: null };
    const { view, notices, result } = await core.ask({
      kind: "plan",
      aircraft: { text, file },
      withBook: true,
      conditions,
      units,
    });
    if (turn !== this.#turn || this.#session.places.open !== "aircraft") return;
    placeOf("plan-now").textContent = result?.text ?? "";
    if (result === null) placeOf("plan").replaceChildren(noticeItems(notices));
    else showView(placeOf("plan"), view);
  }

  #save(): void {
    const { aircraft } = this.#session;
    if (aircraft === null) return;
    const name = aircraft.file.endsWith(".json") ? aircraft.file : "aircraft.json";
    download(name, aircraft.text);
    tell(clientWords.savedAs(name));
  }

  async #keep(): Promise<void> {
    const { aircraft, core } = this.#session;
    if (aircraft === null) return;
    const { text, file } = aircraft;
    const { result, notices } = await core.ask({ kind: "keepAircraft", text, file });
    tell(result === null ? (notices[0]?.text ?? "") : clientWords.keptAircraft(result.name));
  }
}
