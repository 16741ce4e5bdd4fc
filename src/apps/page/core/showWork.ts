import { type BookFiles, checkAsKept, flightPath, keptFlightAt } from "../../../season/logbook/index.ts";
import { flightReport } from "../../../show/report/index.ts";
import type { ShowAnswer, ShowWork } from "../messages.ts";
import { pageSentences } from "../sentences.ts";
import type { Book } from "./book.ts";
import { sha256Of } from "./sha256.ts";

/** A flight as the book keeps it, and the report of its log, judged as the book judged it. */
export async function showWork({ flight }: ShowWork, book: Book): Promise<ShowAnswer> {
  const nothing = { kind: "show", flight: null, check: null, report: null } as const;
  const kept = await book.read((files) => keptOrWhy(flight, files));
  if (typeof kept === "string") return { ...nothing, why: kept };
  const without = (why: string): ShowAnswer => ({ ...nothing, flight: kept, why });
  const bytes = await book.readLog(kept.log.path);
  if (bytes === null) return without(pageSentences.logGone(flight));
  if (sha256Of(bytes) !== kept.log.sha256) return without(pageSentences.logDiffers(flight));
  const checked = checkAsKept(kept, bytes);
  if (checked === null) return without(pageSentences.notFoundAgain(flight));
  const { facts, budget } = kept;
  const report = flightReport({ checked, facts, budget, release: book.release });
  return { kind: "show", flight: kept, check: checked.check, report, why: null };
}

function keptOrWhy(flight: string, files: BookFiles) {
  if (!files.has(flightPath(flight))) return pageSentences.noFlight(flight);
  const read = keptFlightAt(files, flightPath(flight), sha256Of);
  return read.state === "read" ? read.entry : read.why;
}
