import type { DisplayUnits } from "../../../base/quantity/index.ts";
import type { AircraftInBook, Answers } from "../messages.ts";
import type { Core } from "./core.ts";
import type { Places } from "./places.ts";
import { tell } from "./tell.ts";
import { clientWords } from "./words.ts";

/** The aircraft that logs are held against. */
export interface OwnAircraft {
  readonly name: string;
  readonly text: string;
  readonly file: string;
  /** Its name when it was taken in: the same through every edit. */
  readonly takenAs: string;
  /** All that the measures of a log are made from. */
  readonly measuring: string;
}

/** What the places of the page share. */
export class Session {
  readonly core: Core;
  readonly places: Places;
  /** Header signature to answers given on this page; with an aircraft they are kept in its file too. */
  readonly remembered: Record<string, Answers> = Object.create(null) as Record<string, Answers>;
  #aircraft: OwnAircraft | null = null;
  #units: DisplayUnits = "metric";
  readonly #onAircraft: (() => void)[] = [];
  readonly #onUnits: (() => void)[] = [];
  readonly #onBook: (() => void)[] = [];

  constructor(core: Core, places: Places) {
    this.core = core;
    this.places = places;
  }

  get aircraft(): OwnAircraft | null {
    return this.#aircraft;
  }

  set aircraft(aircraft: OwnAircraft | null) {
    this.#aircraft = aircraft;
    for (const act of this.#onAircraft) act();
  }

  get units(): DisplayUnits {
    return this.#units;
  }

  set units(units: DisplayUnits) {
    this.#units = units;
    for (const act of this.#onUnits) act();
  }

  onAircraft(act: () => void): void {
    this.#onAircraft.push(act);
  }

  onUnits(act: () => void): void {
    this.#onUnits.push(act);
  }

  /** Hears that flights of the logbook were removed, brought back or taken in. */
  onBook(act: () => void): void {
    this.#onBook.push(act);
  }

  bookChanged(): void {
    for (const act of this.#onBook) act();
  }

  /** A new text of the same aircraft, such as one with an answer in it; no log needs to be read again for it. */
  async keepText(text: string): Promise<void> {
    if (this.#aircraft === null) return;
    const { name, file } = this.#aircraft;
    this.#aircraft = { ...this.#aircraft, text };
    const kept = await this.aircraftOfBook();
    if (kept.some((one) => one.name === name)) await this.core.ask({ kind: "keepAircraft", text, file });
    tell(clientWords.answerKept(name));
  }

  async aircraftOfBook(): Promise<readonly AircraftInBook[]> {
    return (await this.core.ask({ kind: "list", aircraft: null })).aircraft;
  }
}
