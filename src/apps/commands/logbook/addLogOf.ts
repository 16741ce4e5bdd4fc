import type { ReadingOptions } from "../../../log/reading/index.ts";
import {
  type Added,
  type AddedLog,
  addLog,
  type ChosenAircraft,
  type GivenFacts,
  NOTHING_MORE,
} from "../../../season/logbook/index.ts";
import type { Io } from "../io.ts";
import { logName, readLogBytes } from "../logInput.ts";
import type { Talk } from "../talk.ts";
import type { OpenBook } from "./openBook.ts";

/** What is the same for every log of one call. */
export interface AddWork {
  readonly book: OpenBook;
  readonly io: Io;
  readonly talk: Talk;
  readonly aircraftOf: (files: Parameters<Parameters<OpenBook["read"]>[0]>[0]) => ChosenAircraft;
  readonly given: GivenFacts;
  readonly options: ReadingOptions;
  readonly isAgain: boolean;
}

/**
 * Adds the log of a path to the book.
 * @param chargedWith flights of this call that the put-back covers too
 */
export async function addLogOf(
  log: string,
  chargedWith: readonly string[],
  work: AddWork,
): Promise<AddedLog> {
  const file = logName(log);
  const input = await readLogBytes(log, work.io, work.talk);
  if (input.state === "unusable") {
    const { code, text } = input;
    const outcome: Added = { state: "stopped", notices: [{ code, severity: "refusal", text }] };
    return { file, sha256: "", aircraft: null, outcome, check: null, ...NOTHING_MORE };
  }
  return addLog(work.book, { file, bytes: input.bytes }, { ...work, chargedWith });
}
