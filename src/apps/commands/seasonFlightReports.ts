import { join, resolve } from "node:path";
import type { CheckedLogWithRows } from "../../flight/check/index.ts";
import { dayOf, type KeptFlight, readingOptionsOf } from "../../season/logbook/index.ts";
import { flightReport } from "../../show/report/index.ts";
import { sha256Of } from "../disk/index.ts";
import { checkBytes } from "./checkOne.ts";
import type { Io } from "./io.ts";
import type { OpenBook } from "./logbook/openBook.ts";
import { progressOf } from "./logbook/progress.ts";
import { logbookSentences } from "./logbook/sentences.ts";
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
  const progress = progressOf(entries.length, io);
  for (const entry of entries) {
    const { html, why } = await reportOf(entry, work);
    if (html === null) talk.say(seasonSentences.withoutReport(entry.flight, why));
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
  if (bytes === null) return { html: null, why: logbookSentences.logGone(entry.flight) };
  if (sha256Of(bytes) !== entry.log.sha256)
    return { html: null, why: logbookSentences.logDiffers(entry.flight) };
  const { facts, budget } = entry;
  const checked = checkBytes(entry.log.file, bytes, {
    aircraft: { name: entry.aircraft, facts, budget, readings: [] },
    options: readingOptionsOf(entry.reading),
    day: dayOf(entry.given),
  });
  const own = onlyFlight(checked, entry.log.index);
  if (own === null) return { html: null, why: seasonSentences.notFound() };
  return { html: flightReport({ checked: own, facts, budget, release: book.frame.release }), why: "" };
}

/** The check of a log with one of its flights alone; null when the log does not hold it. */
function onlyFlight(checked: CheckedLogWithRows, index: number): CheckedLogWithRows | null {
  const [flight, analysed] = [checked.check.flights[index], checked.analysed[index]];
  if (flight === undefined || analysed === undefined) return null;
  return { ...checked, check: { ...checked.check, flights: [flight] }, analysed: [analysed] };
}
