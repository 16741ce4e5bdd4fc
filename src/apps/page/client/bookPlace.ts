import type { ListAnswer, WantedAircraft } from "../messages.ts";
import { aircraftChoice, type ViewName, viewChoice } from "./bookChoices.ts";
import { bookFlights, packsOf } from "./bookFlights.ts";
import { download } from "./download.ts";
import { button, element, inputOf, placeOf } from "./element.ts";
import { pageWords } from "./pageWords.ts";
import type { Session } from "./session.ts";
import { showAnswer } from "./showAnswer.ts";
import { clearReport, showReport } from "./showReport.ts";
import { inBackground, tell } from "./tell.ts";
import { timerFields } from "./timerFields.ts";
import { unitsNote } from "./unitsChoice.ts";
import { clientWords } from "./words.ts";

/** The place of the logbook: flights, timer, trends and season of one aircraft, and the book as a file. */
export class BookPlace {
  readonly #session: Session;
  #view: ViewName = "flights";
  /** Whose flights; null for the only aircraft of the book. */
  #name: string | null = null;
  /** Counts what was asked for: an answer to something earlier is out of date and must not be shown. */
  #turn = 0;

  constructor(session: Session) {
    this.#session = session;
    placeOf("book-place").textContent = session.core.place.text;
    session.places.add("logbook", {
      enter: () => inBackground(() => this.#enter()),
      leave: () => this.#clear(),
    });
    const wire = (id: string, act: () => Promise<void>) =>
      placeOf(id).addEventListener("click", () => inBackground(act));
    wire("export-book", () => this.#export());
    wire("undo-book", () => this.#undo());
    const input = inputOf("book-input");
    placeOf("import-book").addEventListener("click", () => input.click());
    input.addEventListener("change", () => {
      const file = input.files?.[0];
      input.value = "";
      if (file !== undefined) inBackground(() => this.#import(file));
    });
  }

  async #enter(): Promise<void> {
    const turn = this.#nextTurn();
    const listed = await this.#session.core.ask({ kind: "list", aircraft: null });
    if (turn !== this.#turn) return;
    const names = listed.aircraft.map(({ name }) => name);
    const own = this.#session.aircraft?.name ?? null;
    if (this.#name === null || !names.includes(this.#name))
      this.#name = own !== null && names.includes(own) ? own : (names[0] ?? null);
    this.#drawChoices(names);
    await this.#show();
  }

  #clear(): void {
    this.#turn += 1;
    clearReport(placeOf("book-report"));
    placeOf("book-view").replaceChildren();
  }

  #drawChoices(names: readonly string[]): void {
    const views = viewChoice(this.#view, (view) => {
      this.#view = view;
      tell("");
      inBackground(() => this.#enter());
    });
    const aircraft = aircraftChoice(names, this.#name, (name) => {
      this.#name = name;
      inBackground(() => this.#show());
    });
    placeOf("book-choices").replaceChildren(...(names.length > 1 ? [aircraft] : []), views);
  }

  async #show(): Promise<void> {
    this.#clear();
    const turn = this.#turn;
    const { list } = await this.#session.core.ask({ kind: "list", aircraft: this.#name });
    if (turn !== this.#turn) return;
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
    const flights = bookFlights(list, {
      session: this.#session,
      packs: packsOf(list.flights),
      open: (flight) => inBackground(() => this.#openFlight(flight)),
      changed: (flight) => {
        this.#session.bookChanged();
        inBackground(() => this.#showChanged(flight));
      },
    });
    placeOf("book-view").replaceChildren(flights);
  }

  /** The flights anew; keys go on from the one that was changed, or from the top when it is gone. */
  async #showChanged(flight: string): Promise<void> {
    await this.#show();
    const items = [...placeOf("book-view").querySelectorAll<HTMLElement>("[data-flight]")];
    const own = items.find(({ dataset }) => dataset.flight === flight);
    (own?.querySelector("button") ?? placeOf("logbook-title")).focus();
  }

  #showTimer({ flights }: ListAnswer["list"]): void {
    const { core, units } = this.#session;
    const answer = element("div", { class: "answer" });
    const fields = timerFields(packsOf(flights), units, (next) =>
      inBackground(async () => {
        const turn = this.#nextTurn();
        const set = await core.ask({ kind: "timer", aircraft: this.#wanted, ...next });
        if (turn === this.#turn) showAnswer(answer, set);
      }),
    );
    placeOf("book-view").replaceChildren(fields, ...unitsNote(this.#session.units), answer);
  }

  async #showTrends(): Promise<void> {
    const turn = this.#nextTurn();
    const trends = await this.#session.core.ask({ kind: "trend", aircraft: this.#wanted });
    if (turn !== this.#turn) return;
    const place = placeOf("book-view");
    showAnswer(place, trends);
    const since = trends.result?.sinceLastFlight ?? null;
    if (since !== null) place.prepend(element("p", { class: "headline" }, since));
    place.prepend(...unitsNote(this.#session.units));
  }

  async #showSeason(): Promise<void> {
    const turn = this.#nextTurn();
    const season = await this.#session.core.ask({ kind: "season", aircraft: this.#wanted });
    if (turn !== this.#turn) return;
    if (season.result === null) return showAnswer(placeOf("book-view"), { ...season, view: "" });
    placeOf("book-view").replaceChildren(...unitsNote(this.#session.units));
    await showReport(placeOf("book-report"), season.result);
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
    const back = button("Back to the flights", () => inBackground(() => this.#enter()));
    const buttons = element("div", { class: "buttons" }, back);
    placeOf("book-view").replaceChildren(buttons, ...unitsNote(this.#session.units));
    back.focus();
    await showReport(placeOf("book-report"), report);
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
    this.#session.bookChanged();
    await this.#enter();
  }

  async #undo(): Promise<void> {
    tell((await this.#session.core.ask({ kind: "undo" })).text);
    this.#session.bookChanged();
    await this.#enter();
  }
}
