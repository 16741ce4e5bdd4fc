import type { AircraftKey } from "../../../aircraft/index.ts";
import { displayedUnit, fieldNumber, numberFromDisplayed, unitText } from "../../../base/quantity/index.ts";
import { button, element, placeOf, settled } from "./element.ts";
import { type Field, field, textInput, typedNumber } from "./field.ts";
import { rangeWords } from "./keyField.ts";
import { noticeItems } from "./notices.ts";
import type { Session } from "./session.ts";
import { showView } from "./showReport.ts";
import { fittedOf, SWAP_KEYS, type SwapKey, swapOf } from "./swapFields.ts";
import { clientWords } from "./words.ts";

const TYPING_MS = 200;

/** The place of changes before they are bought: fields to step, and both sides of the answer. */
export class SwapPlace {
  readonly #session: Session;
  readonly #chosen = new Map<SwapKey["name"], number | null>();
  #aircraft: string | null = null;
  #turn = 0;
  readonly #settle = settled(TYPING_MS, () => void this.#ask());

  constructor(session: Session) {
    this.#session = session;
    session.places.add("swap", {
      enter: () => void this.#draw(),
      leave: () => placeOf("swap-view").replaceChildren(),
    });
    session.onUnits(() => void this.#draw());
  }

  async #draw(): Promise<void> {
    const { aircraft, core, places } = this.#session;
    if (places.open !== "swap") return;
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
    const fallbacks = new Map(
      keys.flatMap(({ path, fallback }) => (fallback ? [[path, fallback.value]] : [])),
    );
    const lines = SWAP_KEYS.map((key) => {
      const fitted = fittedOf(key, values, fallbacks);
      return this.#line(key, fitted, keys.find(({ path }) => path === key.path) ?? null);
    });
    const back = button("Back to what is fitted", () => {
      this.#chosen.clear();
      void this.#draw();
    });
    placeOf("swap-fields").replaceChildren(
      element("div", { class: "steppers" }, ...lines),
      element("div", { class: "buttons" }, back),
    );
    await this.#ask();
  }

  #line(key: SwapKey, fitted: number | null, of: AircraftKey | null): HTMLElement {
    const { units } = this.#session;
    const shown = (value: number): string => fieldNumber(value, key.unit, units);
    const at = this.#chosen.get(key.name) ?? fitted;
    const input = textInput(at === null ? "" : shown(at), true);
    input.dataset.swap = key.name;
    const help = fitted === null ? "As fitted: not known." : `As fitted: ${shown(fitted)}.`;
    const unit = unitText(displayedUnit(key.unit, units));
    const own = field({ label: key.label, unit, help }, input);
    input.addEventListener("input", () => this.#take(key, fitted, own, of));
    const step = (by: number): void => {
      const now = typedNumber(input.value);
      const from = now === null || Number.isNaN(now) ? Number(shown(fitted ?? 0)) : now;
      input.value = String(Number((from + by).toPrecision(7)));
      this.#take(key, fitted, own, of);
    };
    const less = button("−", () => step(-key.step), { "aria-label": `${key.label}: less`, class: "step" });
    const more = button("+", () => step(key.step), { "aria-label": `${key.label}: more`, class: "step" });
    input.before(less);
    input.after(more);
    input.addEventListener("keydown", (event) => {
      if (event.key !== "ArrowUp" && event.key !== "ArrowDown") return;
      event.preventDefault();
      step(event.key === "ArrowUp" ? key.step : -key.step);
    });
    return own.root;
  }

  #take(key: SwapKey, fitted: number | null, own: Field, of: AircraftKey | null): void {
    const { units } = this.#session;
    const typed = typedNumber(own.input.value);
    if (Number.isNaN(typed)) {
      own.fault(clientWords.wrongNumber(key.label));
      return;
    }
    const value = typed === null ? null : numberFromDisplayed(typed, key.unit, units);
    const limits = of?.number ?? null;
    const isOut =
      value !== null &&
      limits !== null &&
      (value < limits.low || value > limits.high || (limits.isWhole && !Number.isInteger(value)));
    own.fault(
      isOut && of !== null ? clientWords.outOfRange(key.label, rangeWords(of, units, key.unit)) : null,
    );
    if (isOut) return;
    this.#chosen.set(key.name, value === fitted ? null : value);
    // An answer still on its way is of the fields as they were: it must not stand as this one's.
    this.#turn += 1;
    this.#settle();
  }

  async #ask(): Promise<void> {
    const { aircraft, core, units, places } = this.#session;
    if (aircraft === null) return;
    this.#turn += 1;
    const turn = this.#turn;
    const { text, file } = aircraft;
    const own = { kind: "swap", aircraft: { text, file }, withBook: true, units } as const;
    const { view, notices, result } = await core.ask({ ...own, ...swapOf(this.#chosen) });
    if (turn !== this.#turn || places.open !== "swap") return;
    const isSame = [...this.#chosen.values()].every((value) => value === null);
    placeOf("swap-now").textContent = isSame ? clientWords.nothingChanged : (result?.text ?? "");
    if (result === null) placeOf("swap-view").replaceChildren(noticeItems(notices));
    else showView(placeOf("swap-view"), view);
  }
}
