import { resolve } from "node:path";
import { aircraftOfBook, flightsCsv, readKeptFlights } from "../../season/logbook/index.ts";
import type { Call, CommandDefinition } from "./commandDefinition.ts";
import { EXIT, type ExitCode } from "./exitCodes.ts";
import { usageFailure } from "./failure.ts";
import type { Io } from "./io.ts";
import { BOOK_OPTION, DRY_RUN_OPTION, JSON_OPTION, type OpenBook, openBook } from "./logbook/openBook.ts";
import { logbookSentences } from "./logbook/sentences.ts";
import { wholeBookOf } from "./logbook/wholeBookOf.ts";
import type { Talk } from "./talk.ts";
import { existing, writeNew } from "./writeOutput.ts";

export const command: CommandDefinition = {
  operands: "<FILE>",
  about: "write the flights to a file: .csv, .json, or .book.json for the whole logbook",
  examples: [
    { line: "tallywatt export flights.csv", about: "a table for a spreadsheet, text cells made harmless" },
    { line: "tallywatt export season.book.json", about: "everything with its logs; add takes it in again" },
  ],
  options: [
    BOOK_OPTION,
    { flags: "--force", help: "replace a file that is there" },
    DRY_RUN_OPTION,
    JSON_OPTION,
  ],
  run,
};

/** A file's text and how many flights it holds. */
interface Exported {
  readonly text: string;
  readonly flights: number;
}

async function run(call: Call, io: Io, talk: Talk): Promise<ExitCode> {
  const [file = ""] = call.operands;
  const write = writerOf(file);
  if (write === undefined) throw usageFailure(logbookSentences.exportEnding(file));
  const book = openBook(call, io, talk);
  const { text, flights } = await write(book);
  const path = resolve(io.workFolder, file);
  if (book.isDry) existing(io, path);
  else writeNew(io, path, text, call.has("force"));
  if (call.has("json")) {
    const head = { format: "tallywatt/export", version: 1, dryRun: book.isDry };
    talk.data(JSON.stringify({ ...head, file, flights }, null, 2));
  } else talk.data(logbookSentences.exported(flights, file, book.isDry));
  return EXIT.done;
}

function writerOf(file: string): ((book: OpenBook) => Promise<Exported>) | undefined {
  const name = file.toLowerCase();
  if (name.endsWith(".book.json")) return wholeBookOf;
  if (name.endsWith(".csv")) return csvOf;
  return name.endsWith(".json") ? jsonOf : undefined;
}

function csvOf(book: OpenBook): Promise<Exported> {
  return book.read((files) => {
    const { entries } = readKeptFlights(files, book.frame.digest);
    return { text: flightsCsv(entries), flights: entries.length };
  });
}

function jsonOf(book: OpenBook): Promise<Exported> {
  return book.read((files) => {
    const { entries, damaged } = readKeptFlights(files, book.frame.digest);
    const aircraft = aircraftOfBook(files).aircraft.map(({ name, facts, budget }) => ({
      name,
      facts,
      budget,
    }));
    const value = { format: "tallywatt/flights", version: 1, aircraft, flights: entries, damaged };
    return { text: `${JSON.stringify(value, null, 2)}\n`, flights: entries.length };
  });
}
