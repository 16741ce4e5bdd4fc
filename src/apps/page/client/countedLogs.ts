import type { MeasuredLog, RestsOn } from "../messages.ts";
import { button, element } from "./element.ts";
import type { Logs } from "./logs.ts";
import type { Session } from "./session.ts";
import { clientWords } from "./words.ts";

/** No log says whose flight it holds: all count for the aircraft in view but those that the pilot leaves out of it. */
export class CountedLogs {
  readonly #session: Session;
  readonly #logs: Logs;
  /** Aircraft as it was taken in, to the SHA-256 of logs that are not its own. */
  readonly #leftOut = new Map<string, Set<string>>();

  constructor(session: Session, logs: Logs) {
    this.#session = session;
    this.#logs = logs;
  }

  /** What the logs that count say of the parts, as far as they are read. */
  measured(): readonly MeasuredLog[] {
    const leftOut = this.#leftOutNow();
    return this.#logs.all.flatMap(({ measured }) =>
      measured === null || leftOut.has(measured.sha256) ? [] : measured,
    );
  }

  /** The logs that a prediction rests on, by name, and a button for each that leaves it out or counts it again. */
  show(flights: RestsOn, changed: () => void): readonly HTMLElement[] {
    const { logs } = flights;
    const files = this.#files();
    const counted = logs.map((sha256) => files.get(sha256) ?? "");
    const words = element("p", { class: "quiet" }, clientWords.predictedFrom(flights, counted));
    const leftOut = this.#leftOutNow();
    const offered = [...logs, ...[...leftOut].filter((one) => !logs.includes(one))];
    const buttons = offered.map((sha256) => this.#choice(sha256, files.get(sha256) ?? "", changed));
    if (buttons.length === 0) return [words];
    const lead = element("p", { class: "quiet" }, clientWords.whoseLogs(this.#session.aircraft?.name ?? ""));
    return [words, lead, element("div", { class: "buttons" }, ...buttons)];
  }

  #choice(sha256: string, file: string, changed: () => void): HTMLButtonElement {
    const leftOut = this.#leftOutNow();
    const isOut = leftOut.has(sha256);
    const act = () => {
      if (isOut) leftOut.delete(sha256);
      else leftOut.add(sha256);
      changed();
    };
    return button(isOut ? clientWords.countLog(file) : clientWords.leaveOutLog(file), act, {
      "data-log": sha256,
    });
  }

  #files(): ReadonlyMap<string, string> {
    return new Map(
      this.#logs.all.flatMap(({ sha256, file }) => (sha256 === null ? [] : [[sha256, file.name] as const])),
    );
  }

  #leftOutNow(): Set<string> {
    const aircraft = this.#session.aircraft?.takenAs ?? "";
    const known = this.#leftOut.get(aircraft) ?? new Set();
    this.#leftOut.set(aircraft, known);
    return known;
  }
}
