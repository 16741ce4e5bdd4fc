import type { Budget } from "../../aircraft/budget.ts";
import type { Facts } from "../../aircraft/facts.ts";
import type { RememberedReading } from "../../aircraft/index.ts";
import { checkLog } from "../../flight/check/index.ts";
import type { GivenFacts, KeptFlight } from "./entry.ts";
import { dayOf, judgedFacts } from "./givenFacts.ts";
import { foundFlights, keptFlight, readingOptionsOf } from "./keptFlights.ts";
import type { OpenedBook } from "./openedBook.ts";
import { bookSentences } from "./sentences.ts";

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
  book: OpenedBook,
  old: KeptFlight,
  { given, facts, budget, readings }: JudgedBy,
): Promise<CheckedAgain> {
  const bytes = await book.readLog(old.log.path);
  if (bytes === null) return { state: "stays", why: bookSentences.logGone(old.flight) };
  const { file, sha256 } = old.log;
  if (book.frame.digest(bytes) !== sha256) {
    return { state: "stays", why: bookSentences.logDiffers(old.flight) };
  }
  const judged = judgedFacts(facts, given, old.reading.cells);
  const aircraft = { aircraft: old.aircraft, facts: judged, budget, readings };
  const how = { options: readingOptionsOf(old.reading), day: dayOf(given) };
  const checked = checkLog(bytes, { file, sha256, ...aircraft, ...how });
  const found = foundFlights(checked, given, old.reading);
  const own = found[old.log.index];
  if (own === undefined) return { state: "stays", why: whyNot(old, checked.check.log.notices, found.length) };
  const log = { ...old.log, flights: found.length };
  const judgedWith = { given, reading: old.reading, facts: judged, budget, release: book.frame.release };
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
  if (stopping !== undefined) return bookSentences.notReadAgain(flight, stopping.text);
  return found === 0
    ? bookSentences.notReadAgain(flight, bookSentences.nothingFlew())
    : bookSentences.notFoundAgain(flight, found);
}
