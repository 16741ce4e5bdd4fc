import { bookSentences, checkAsKept, namedFlights } from "../../../season/logbook/index.ts";
import { flightReport } from "../../../show/report/index.ts";
import type { ShowAnswer, ShowWork } from "../messages.ts";
import { pageSentences } from "../sentences.ts";
import type { Book } from "./book.ts";
import { sha256Of } from "./sha256.ts";

/** A flight as the book keeps it, and the report of its log, judged as the book judged it. */
export async function showWork({ flight }: ShowWork, book: Book): Promise<ShowAnswer> {
  const nothing = { kind: "show", flight: null, check: null, report: null } as const;
  const named = await book.read((files) => namedFlights([flight], files, sha256Of));
  if (named.state === "unusable") return { ...nothing, why: named.why };
  const [found] = named.flights;
  if (found === undefined) return { ...nothing, why: null };
  const { entry } = found;
  const without = (why: string): ShowAnswer => ({ ...nothing, flight: entry, why });
  const bytes = await book.readLog(entry.log.path);
  if (bytes === null) return without(bookSentences.logGone(flight));
  if (sha256Of(bytes) !== entry.log.sha256) return without(bookSentences.logDiffers(flight));
  const checked = checkAsKept(entry, bytes);
  if (checked === null) return without(pageSentences.notFoundAgain(flight));
  const { facts, budget } = entry;
  const report = flightReport({ checked, facts, budget, release: book.release });
  return { kind: "show", flight: entry, check: checked.check, report, why: null };
}
