import { join, resolve } from "node:path";
import { bookSentences, checkAsKept, type KeptFlight } from "../../season/logbook/index.ts";
import { flightReport } from "../../show/report/index.ts";
import { sha256Of } from "../disk/index.ts";
import type { Io } from "./io.ts";
import type { OpenBook } from "./logbook/openBook.ts";
import { progressOf } from "./logbook/progress.ts";
import { seasonSentences } from "./seasonSentences.ts";
import type { Talk } from "./talk.ts";
import { writeReport } from "./writeOutput.ts";

export interface FlightReportsWork {
  readonly book: OpenBook;
  readonly io: Io;
  readonly talk: Talk;
  /** As the user would write it. */
  readonly folder: string;
  readonly isForced: boolean;
}

/**
 * Writes each flight's own report into the folder and gives their file names by flight. A flight whose log is
 * gone or damaged is told and left out.
 */
export async function writeFlightReports(
  entries: readonly KeptFlight[],
  work: FlightReportsWork,
): Promise<ReadonlyMap<string, string>> {
  const { io, talk } = work;
  const written = new Map<string, string>();
  const progress = progressOf(entries.length, io, talk);
  for (const entry of entries) {
    const { html, why } = await reportOf(entry, work);
    if (html === null) progress.talk.say(seasonSentences.withoutReport(entry.flight, why));
    else {
      const name = `${entry.flight}.html`;
      writeReport(io, resolve(io.workFolder, join(work.folder, name)), html, work.isForced);
      written.set(entry.flight, name);
    }
    progress.step();
    await io.pause();
  }
  progress.end();
  return written;
}

interface ReportOrWhy {
  readonly html: string | null;
  readonly why: string;
}

/** The report of one flight of its log, judged as the book judged it. */
async function reportOf(entry: KeptFlight, { book }: FlightReportsWork): Promise<ReportOrWhy> {
  const bytes = await book.readLog(entry.log.path);
  if (bytes === null) return { html: null, why: bookSentences.logGone(entry.flight) };
  if (sha256Of(bytes) !== entry.log.sha256)
    return { html: null, why: bookSentences.logDiffers(entry.flight) };
  const { facts, budget } = entry;
  const checked = checkAsKept(entry, bytes);
  if (checked === null) return { html: null, why: seasonSentences.notFound() };
  return { html: flightReport({ checked, facts, budget, release: book.frame.release }), why: "" };
}
