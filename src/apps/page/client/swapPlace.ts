import type { AircraftKey } from "../../../aircraft/index.ts";
import { fieldNumber } from "../../../base/quantity/index.ts";
import type { CountedLogs } from "./countedLogs.ts";
import { button, element, placeOf, settled } from "./element.ts";
import { typedNumber } from "./field.ts";
import type { Logs } from "./logs.ts";
import { type NumberField, numberField } from "./numberField.ts";
import type { Session } from "./session.ts";
import { showPrediction } from "./showAnswer.ts";
import { fittedOf, SWAP_KEYS, type SwapKey, swapOf } from "./swapFields.ts";
import { inBackground } from "./tell.ts";
import { clientWords } from "./words.ts";

/** The place of changes before they are bought: fields to step, and both sides of the answer. */
export class SwapPlace {
  readonly #session: Session;
  readonly #logs: Logs;
  readonly #counted: CountedLogs;
  readonly #chosen = new Map<SwapKey["name"], number | null>();
  #aircraft: string | null = null;
  #drawTurn = 0;
  #turn = 0;
  readonly #settle = settled(() => inBackground(() => this.#ask()));

  constructor(session: Session, logs: Logs, counted: CountedLogs) {
    this.#session = session;
    this.#logs = logs;
    this.#counted = counted;
    session.places.add("swap", {
      enter: () => this.#enter(),
      leave: () => placeOf("swap-view").replaceChildren(),
    });
    session.onUnits(() => inBackground(() => this.#draw()));
    session.onAircraft(() => {
      if (session.places.open === "swap") this.#enter();
    });
    logs.onRead(() => this.#settle());
  }

  #enter(): void {
    inBackground(() => this.#logs.measureAgain());
    inBackground(() => this.#draw());
  }

  async #draw(): Promise<void> {
    const { aircraft, core, places } = this.#session;
    if (places.open !== "swap") return;
    this.#drawTurn += 1;
    const turn = this.#drawTurn;
    if (aircraft === null) {
      const choose = button("Choose an aircraft", () => places.go("aircraft"));
      placeOf("swap-fields").replaceChildren(element("p", {}, clientWords.swapNeedsAircraft), choose);
      return;
    }
    if (this.#aircraft !== aircraft.name) this.#chosen.clear();
    this.#aircraft = aircraft.name;
    const { text, file } = aircraft;
    const [{ keys }, { values }] = await Promise.all([
      core.ask({ kind: "aircraftKeys" }),
      core.ask({ kind: "aircraft", text, file }),
    ]);
    if (turn !== this.#drawTurn) return;
    const fallbacks = new Map(
      keys.flatMap(({ path, fallback }) => (fallback ? [[path, fallback.value]] : [])),
    );
    const lines = SWAP_KEYS.map((key) => this.#line(key, fittedOf(key, values, fallbacks), keys));
    const back = button("Back to what is fitted", () => {
      this.#chosen.clear();
      inBackground(() => this.#draw());
    });
    placeOf("swap-fields").replaceChildren(
      element("div", { class: "steppers" }, ...lines),
      element("div", { class: "buttons" }, back),
    );
    await this.#ask();
  }

  #line(key: SwapKey, fitted: number | null, keys: readonly AircraftKey[]): HTMLElement {
    const { units } = this.#session;
    const shown = (value: number): string => fieldNumber(value, key.unit, units);
    const help = fitted === null ? "As fitted: not known." : `As fitted: ${shown(fitted)}.`;
    const limits = keys.find(({ path }) => path === key.path)?.number;
    const range = { low: -Infinity, high: Infinity, ...limits, unit: key.unit };
    const value = this.#chosen.get(key.name) ?? fitted;
    const own = numberField({ label: key.label, help, range, value, units });
    const { input } = own;
    input.dataset.swap = key.name;
    input.addEventListener("input", () => this.#take(key, fitted, own));
    const step = (by: number): void => {
      const now = typedNumber(input.value);
      const from = now === null || Number.isNaN(now) ? Number(shown(fitted ?? 0)) : now;
      input.value = String(Number((from + by).toPrecision(7)));
      this.#take(key, fitted, own);
    };
    addSteps(own, key, step);
    return own.root;
  }

  #take(key: SwapKey, fitted: number | null, own: NumberField): void {
    const value = own.read();
    if (value === undefined) return;
    this.#chosen.set(key.name, value === fitted ? null : value);
    // An answer still on its way is of the fields as they were: it must not stand as this one's.
    this.#turn += 1;
    this.#settle();
  }

  async #ask(): Promise<void> {
    const { aircraft, core, units, places } = this.#session;
    if (aircraft === null || places.open !== "swap") return;
    this.#turn += 1;
    const turn = this.#turn;
    const { text, file } = aircraft;
    const logs = this.#counted.measured();
    const own = { kind: "swap", aircraft: { text, file }, withBook: true, logs, units } as const;
    const answer = await core.ask({ ...own, ...swapOf(this.#chosen) });
    if (turn !== this.#turn || places.open !== "swap") return;
    const isSame = [...this.#chosen.values()].every((value) => value === null);
    placeOf("swap-now").textContent = isSame ? clientWords.nothingChanged : (answer.result?.text ?? "");
    showPrediction(placeOf("swap-view"), answer, this.#counted, () => inBackground(() => this.#ask()));
  }
}

/** Buttons beside the field, and the arrow keys in it. */
function addSteps({ input }: NumberField, { label, step: size }: SwapKey, step: (by: number) => void): void {
  input.before(button("−", () => step(-size), { "aria-label": `${label}: less`, class: "step" }));
  input.after(button("+", () => step(size), { "aria-label": `${label}: more`, class: "step" }));
  input.addEventListener("keydown", (event) => {
    if (event.key !== "ArrowUp" && event.key !== "ArrowDown") return;
    event.preventDefault();
    step(event.key === "ArrowUp" ? size : -size);
  });
}
