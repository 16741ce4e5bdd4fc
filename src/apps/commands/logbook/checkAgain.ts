import type { Budget } from "../../../aircraft/budget.ts";
import type { Facts } from "../../../aircraft/facts.ts";
import type { RememberedReading } from "../../../aircraft/index.ts";
import {
  bookSentences,
  dayOf,
  foundFlights,
  type GivenFacts,
  judgedFacts,
  type KeptFlight,
  keptFlight,
  readingOptionsOf,
} from "../../../season/logbook/index.ts";
import { sha256Of } from "../../disk/index.ts";
import { checkBytes } from "../checkOne.ts";
import type { OpenBook } from "./openBook.ts";
import { logbookSentences } from "./sentences.ts";

/** What a flight is judged by this time. */
export interface JudgedBy {
  readonly given: GivenFacts;
  readonly facts: Facts;
  readonly budget: Budget;
  readonly readings: readonly RememberedReading[];
}

export type CheckedAgain =
  | { readonly state: "checked"; readonly entry: KeptFlight; readonly flightsInLog: number }
  | { readonly state: "stays"; readonly why: string };

/** A flight's log checked again by this release; the flight is found by its place in the log. */
export async function checkAgain(
  book: OpenBook,
  old: KeptFlight,
  { given, facts, budget, readings }: JudgedBy,
): Promise<CheckedAgain> {
  const bytes = await book.readLog(old.log.path);
  if (bytes === null) return { state: "stays", why: logbookSentences.logGone(old.flight) };
  if (sha256Of(bytes) !== old.log.sha256) {
    return { state: "stays", why: logbookSentences.logDiffers(old.flight) };
  }
  const judged = judgedFacts(facts, given, old.reading.cells);
  const checked = checkBytes(old.log.file, bytes, {
    aircraft: { name: old.aircraft, facts: judged, budget, readings },
    options: readingOptionsOf(old.reading),
    day: dayOf(given),
  });
  const found = foundFlights(checked, given, old.reading);
  const own = found[old.log.index];
  if (own === undefined) return { state: "stays", why: whyNot(old, checked.check.log.notices, found.length) };
  const log = { ...old.log, flights: found.length };
  const { release } = book.frame;
  const judgedWith = { given, reading: old.reading, facts: judged, budget, release };
  return {
    state: "checked",
    entry: keptFlight({ ...old, log }, judgedWith, own),
    flightsInLog: found.length,
  };
}

function whyNot(
  { flight }: KeptFlight,
  notices: readonly { readonly severity: string; readonly text: string }[],
  found: number,
): string {
  const stopping = notices.find(({ severity }) => severity === "question" || severity === "refusal");
  if (stopping !== undefined) return logbookSentences.notReadAgain(flight, stopping.text);
  return found === 0
    ? logbookSentences.notReadAgain(flight, bookSentences.nothingFlew())
    : logbookSentences.notFoundAgain(flight, found);
}
