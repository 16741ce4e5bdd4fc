import { join } from "node:path";
import {
  type AircraftOfBook,
  aircraftOfBook,
  bookSentences,
  checkAgain,
  flightPath,
  type KeptFlight,
  planReplace,
  type Replacement,
  readKeptFlights,
} from "../../season/logbook/index.ts";
import type { Call, CommandDefinition } from "./commandDefinition.ts";
import { EXIT, type ExitCode } from "./exitCodes.ts";
import type { Io } from "./io.ts";
import { changeLines, type MeasureChange, measureChanges } from "./logbook/measureChanges.ts";
import {
  BOOK_OPTION,
  DRY_RUN_OPTION,
  JSON_OPTION,
  type OpenBook,
  openBook,
  refuseMissingBook,
} from "./logbook/openBook.ts";
import { progressOf } from "./logbook/progress.ts";
import { logbookSentences } from "./logbook/sentences.ts";
import type { Talk } from "./talk.ts";

export const command: CommandDefinition = {
  operands: "",
  about: "analyse every log of the logbook again with this release and say what changed",
  examples: [
    { line: "tallywatt recheck --dry-run", about: "says what would change" },
    { line: "tallywatt recheck --refit", about: "with the aircraft files as they are now" },
  ],
  options: [
    BOOK_OPTION,
    { flags: "--refit", help: "judge by today's aircraft file, not by the facts of the day" },
    DRY_RUN_OPTION,
    JSON_OPTION,
  ],
  run,
};

/** What a recheck found for one flight. */
interface Rechecked {
  readonly flight: string;
  readonly changes: readonly MeasureChange[];
  /** Why the flight stays as it was; null when it was checked. */
  readonly why: string | null;
  readonly replacement: Replacement | null;
}

async function run(call: Call, io: Io, talk: Talk): Promise<ExitCode> {
  const book = openBook(call, io, talk);
  refuseMissingBook(book.folder, io);
  const { kept, aircraft, texts } = await book.read((files) => {
    const all = readKeptFlights(files, book.frame.digest);
    const textOf = new Map(all.entries.map(({ flight }) => [flight, files.get(flightPath(flight)) ?? ""]));
    return { kept: all, aircraft: aircraftOfBook(files), texts: textOf };
  });
  const progress = progressOf(kept.entries.length, io, talk);
  const results: Rechecked[] = [];
  for (const entry of kept.entries) {
    const madeFrom = texts.get(entry.flight) ?? "";
    results.push(await recheck(book, entry, madeFrom, aircraft, call.has("refit"), progress.talk));
    progress.step();
    await io.pause();
  }
  progress.end();
  tell(await replaced(book, results), call, book.isDry, talk);
  if (kept.damaged.length > 0) talk.say(logbookSentences.damagedCount(kept.damaged.length));
  return EXIT.done;
}

/** What became of the flights: one that another program changed meanwhile stays. */
async function replaced(book: OpenBook, results: readonly Rechecked[]): Promise<readonly Rechecked[]> {
  const replacements = results.flatMap(({ replacement }) => replacement ?? []);
  const { changedMeanwhile } = await book.change((files) =>
    planReplace(files, book.frame, bookSentences.rechecked(replacements.length), replacements),
  );
  return results.map((one) =>
    changedMeanwhile.includes(one.flight)
      ? stays(one.flight, bookSentences.changedWhileChecked(one.flight))
      : one,
  );
}

function stays(flight: string, why: string): Rechecked {
  return { flight, changes: [], why, replacement: null };
}

async function recheck(
  book: OpenBook,
  entry: KeptFlight,
  madeFrom: string,
  { aircraft }: AircraftOfBook,
  isRefit: boolean,
  talk: Talk,
): Promise<Rechecked> {
  const { flight, given } = entry;
  const fitted = aircraft.find(({ name }) => name === entry.aircraft);
  if (isRefit && fitted === undefined)
    return stays(flight, logbookSentences.aircraftGone(flight, entry.aircraft));
  const { facts, budget } = isRefit && fitted ? fitted : entry;
  const again = await checkAgain(book, entry, { given, facts, budget, readings: fitted?.readings ?? [] });
  if (again.state === "stays") return stays(flight, again.why);
  const isLast = entry.log.index === entry.log.flights - 1;
  if (isLast && again.flightsInLog > entry.log.flights) {
    talk.say(logbookSentences.moreFound(entry.log.file, join(book.folder, entry.log.path)));
  }
  return {
    flight,
    changes: measureChanges(entry.check.measures, again.entry.check.measures),
    why: null,
    replacement: isSame(entry, again.entry) ? null : { entry: again.entry, madeFrom },
  };
}

function isSame(one: KeptFlight, other: KeptFlight): boolean {
  return JSON.stringify(one) === JSON.stringify(other);
}

function tell(results: readonly Rechecked[], call: Call, isDry: boolean, talk: Talk): void {
  if (call.has("json")) {
    const flights = results.map(({ flight, changes, why }) => ({ flight, changes, why }));
    const head = { format: "tallywatt/recheck", version: 1, dryRun: isDry };
    talk.data(JSON.stringify({ ...head, flights }, null, 2));
    return;
  }
  const changed = results.filter(({ changes }) => changes.length > 0);
  for (const { why } of results) if (why !== null) talk.say(why);
  for (const { flight, changes } of changed) {
    talk.data([flight, ...changeLines(changes).map((line) => `  ${line}`)].join("\n"));
  }
  const same = results.filter(({ changes, why }) => changes.length === 0 && why === null).length;
  talk.data(logbookSentences.rechecked(changed.length, same, isDry));
}
