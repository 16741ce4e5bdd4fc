import type { ListAnswer, WantedAircraft } from "../messages.ts";
import { bookFlights } from "./bookFlights.ts";
import { download } from "./download.ts";
import { button, element, inputOf, placeOf } from "./element.ts";
import { noticeItems } from "./notices.ts";
import { pageWords } from "./pageWords.ts";
import { type Session, tell } from "./session.ts";
import { clearReport, showReport, showView } from "./showReport.ts";
import { timerFields } from "./timerFields.ts";
import { clientWords } from "./words.ts";

type ViewName = "flights" | "timer" | "trends" | "season";
const VIEWS: readonly (readonly [ViewName, string])[] = [
  ["flights", "Flights"],
  ["timer", "Timer"],
  ["trends", "Trends"],
  ["season", "Season report"],
];

/** The place of the logbook: flights, timer, trends and season of one aircraft, and the book as a file. */
export class BookPlace {
  readonly #session: Session;
  #view: ViewName = "flights";
  /** Whose flights; null for the only aircraft of the book. */
  #name: string | null = null;
  #turn = 0;

  constructor(session: Session) {
    this.#session = session;
    placeOf("book-place").textContent = session.core.place.text;
    session.places.add("logbook", { enter: () => void this.#enter(), leave: () => this.#clear() });
    placeOf("export-book").addEventListener("click", () => void this.#guarded(() => this.#export()));
    placeOf("undo-book").addEventListener("click", () => void this.#guarded(() => this.#undo()));
    const input = inputOf("book-input");
    placeOf("import-book").addEventListener("click", () => input.click());
    input.addEventListener("change", () => {
      const file = input.files?.[0];
      input.value = "";
      if (file !== undefined) void this.#guarded(() => this.#import(file));
    });
  }

  async #guarded(work: () => Promise<void>): Promise<void> {
    try {
      await work();
    } catch (error) {
      tell(pageWords(error instanceof Error ? error.message : String(error)));
    }
  }

  async #enter(): Promise<void> {
    await this.#guarded(async () => {
      const listed = await this.#session.core.ask({ kind: "list", aircraft: null });
      const names = listed.aircraft.map(({ name }) => name);
      const own = this.#session.aircraft?.name ?? null;
      if (this.#name === null || !names.includes(this.#name))
        this.#name = own !== null && names.includes(own) ? own : (names[0] ?? null);
      this.#drawChoices(names);
      await this.#show();
    });
  }

  #clear(): void {
    this.#turn += 1;
    clearReport(placeOf("book-report"));
    placeOf("book-view").replaceChildren();
  }

  #drawChoices(names: readonly string[]): void {
    const views = VIEWS.map(([view, words]) =>
      button(
        words,
        () => {
          this.#view = view;
          void this.#enter();
        },
        view === this.#view ? { "aria-pressed": "true" } : { "aria-pressed": "false" },
      ),
    );
    const group = element(
      "div",
      { class: "buttons", role: "group", "aria-label": "Of the logbook" },
      ...views,
    );
    placeOf("book-choices").replaceChildren(...(names.length > 1 ? [this.#picker(names)] : []), group);
  }

  #picker(names: readonly string[]): HTMLElement {
    const select = element("select", { id: "book-aircraft" });
    for (const name of names) select.append(element("option", { value: name }, name));
    select.value = this.#name ?? "";
    select.addEventListener("change", () => {
      this.#name = select.value;
      void this.#guarded(() => this.#show());
    });
    return element("p", {}, element("label", { for: "book-aircraft" }, "Aircraft "), select);
  }

  async #show(): Promise<void> {
    this.#clear();
    const { core } = this.#session;
    const { list } = await core.ask({ kind: "list", aircraft: this.#name });
    if (list.flights.length === 0 && list.damaged.length === 0) {
      placeOf("book-view").replaceChildren(element("p", { class: "empty" }, clientWords.emptyBook));
      return;
    }
    if (this.#view === "flights") this.#showFlights(list);
    if (this.#view === "timer") this.#showTimer(list);
    if (this.#view === "trends") await this.#showTrends();
    if (this.#view === "season") await this.#showSeason();
  }

  get #wanted(): WantedAircraft {
    return this.#name === null ? null : { name: this.#name };
  }

  #showFlights(list: ListAnswer["list"]): void {
    const flights = bookFlights(this.#session, list, {
      open: (flight) => void this.#guarded(() => this.#openFlight(flight)),
      changed: () => void this.#guarded(() => this.#show()),
    });
    placeOf("book-view").replaceChildren(flights);
  }

  #showTimer({ flights }: ListAnswer["list"]): void {
    const packs = [...new Set(flights.flatMap(({ given }) => given.pack ?? []))];
    const answer = element("div", { class: "answer" });
    const fields = timerFields(packs, (next) => {
      void this.#guarded(async () => {
        const turn = this.#nextTurn();
        const work = { kind: "timer", aircraft: this.#wanted, ...next } as const;
        const { view, notices } = await this.#session.core.ask(work);
        if (turn !== this.#turn) return;
        if (notices.length > 0) answer.replaceChildren(noticeItems(notices));
        else showView(answer, view);
      });
    });
    placeOf("book-view").replaceChildren(fields, answer);
  }

  async #showTrends(): Promise<void> {
    const turn = this.#nextTurn();
    const { view, notices, result } = await this.#session.core.ask({ kind: "trend", aircraft: this.#wanted });
    if (turn !== this.#turn) return;
    const place = placeOf("book-view");
    if (result === null) return place.replaceChildren(noticeItems(notices));
    showView(place, view);
    if (result.sinceLastFlight !== null)
      place.prepend(element("p", { class: "headline" }, result.sinceLastFlight));
  }

  async #showSeason(): Promise<void> {
    const turn = this.#nextTurn();
    const { result, notices } = await this.#session.core.ask({ kind: "season", aircraft: this.#wanted });
    if (turn !== this.#turn) return;
    if (result === null) return placeOf("book-view").replaceChildren(noticeItems(notices));
    await showReport(placeOf("book-report"), result);
  }

  #nextTurn(): number {
    this.#turn += 1;
    return this.#turn;
  }

  async #openFlight(flight: string): Promise<void> {
    const turn = this.#nextTurn();
    const { report, why } = await this.#session.core.ask({ kind: "show", flight });
    if (turn !== this.#turn) return;
    if (report === null) return tell(pageWords(why ?? ""));
    const back = button("Back to the flights", () => void this.#enter());
    placeOf("book-view").replaceChildren(element("div", { class: "buttons" }, back));
    await showReport(placeOf("book-report"), report);
    back.focus();
  }

  async #export(): Promise<void> {
    const { core } = this.#session;
    const { file, text, flights } = await core.ask({ kind: "export" }, ({ words }) => tell(words));
    download(file, text);
    tell(clientWords.exported(file, flights));
  }

  async #import(file: File): Promise<void> {
    tell(clientWords.importing);
    const bytes = await file.arrayBuffer();
    const { result, notices } = await this.#session.core.ask({ kind: "import", file: file.name, bytes });
    tell(result === null ? (notices[0]?.text ?? "") : clientWords.imported(result.flights.length));
    await this.#enter();
  }

  async #undo(): Promise<void> {
    tell((await this.#session.core.ask({ kind: "undo" })).text);
    await this.#enter();
  }
}
