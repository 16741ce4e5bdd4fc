import type { EditAircraftAnswer } from "../messages.ts";
import type { KeyValue } from "./keyField.ts";
import type { Session } from "./session.ts";

type Changes = Readonly<Record<string, KeyValue>>;

/** What was typed into the form and is not in the session's text yet, because it is new or because a value is wrong. */
export class AircraftDraft {
  readonly #session: Session;
  readonly #heard: (answer: EditAircraftAnswer) => Promise<void>;
  #changes: Changes = {};
  /** One after the other: each writes into the text that the one before left. */
  #writing: Promise<void> = Promise.resolve();

  /** `heard` takes each answer, with faults or with a text that the session has by then. */
  constructor(session: Session, heard: (answer: EditAircraftAnswer) => Promise<void>) {
    this.#session = session;
    this.#heard = heard;
  }

  get changes(): Changes {
    return this.#changes;
  }

  get isWritten(): boolean {
    return Object.keys(this.#changes).length === 0;
  }

  type(path: string, value: KeyValue): void {
    this.#changes = { ...this.#changes, [path]: value };
  }

  forget(): void {
    this.#changes = {};
  }

  /** Writes what was typed into the text, when every value may be. */
  write(): Promise<void> {
    const next = this.#writing.then(() => this.#writeOnce());
    this.#writing = next.catch(() => {});
    return next;
  }

  async #writeOnce(): Promise<void> {
    const { aircraft, core } = this.#session;
    const changes = this.#changes;
    if (aircraft === null || this.isWritten) return;
    const { text, file } = aircraft;
    const answer = await core.ask({ kind: "editAircraft", text, file, changes });
    // Another text came meanwhile, such as one with an answer in it: what is still to be written goes into that.
    if (this.#session.aircraft !== aircraft) return this.#writeOnce();
    if (answer.name !== null) {
      this.#changes = withoutWritten(this.#changes, changes);
      const { name, text: written, measuring } = answer;
      this.#session.aircraft = { ...aircraft, name, text: written, measuring };
    }
    await this.#heard(answer);
  }
}

/** What was typed anew while the rest was written. */
function withoutWritten(now: Changes, written: Changes): Changes {
  return Object.fromEntries(
    Object.entries(now).filter(([path, value]) => !(path in written) || written[path] !== value),
  );
}
