import type { Call, CommandDefinition } from "./commandDefinition.ts";
import type { ExitCode } from "./exitCodes.ts";
import { usageFailure } from "./failure.ts";
import type { Io } from "./io.ts";
import type { AddWork } from "./logbook/addLogOf.ts";
import { addLogs } from "./logbook/addLogs.ts";
import { AIRCRAFT_OPTION, aircraftOfCall } from "./logbook/aircraftOfCall.ts";
import { GIVEN_OPTIONS, givenFacts } from "./logbook/givenOptions.ts";
import { logsOfCall } from "./logbook/logsOfCall.ts";
import { BOOK_OPTION, DRY_RUN_OPTION, JSON_OPTION, openBook } from "./logbook/openBook.ts";
import { logbookSentences } from "./logbook/sentences.ts";
import { watchLogs } from "./logbook/watchLogs.ts";
import { READING_OPTIONS, readingOptions } from "./readingOptions.ts";
import type { Talk } from "./talk.ts";

export const command: CommandDefinition = {
  operands: "[LOG...]",
  about: "add logs to the logbook: each flight once, with what no log knows",
  examples: [
    {
      line: "tallywatt add flight.csv --aircraft tern.json --pack A --ambient 18",
      about: "the first time with the aircraft file; the logbook keeps it",
    },
    {
      line: "tallywatt add one.csv two.csv --aircraft tern.json --put-back 2380",
      about: "two flights that were charged together",
    },
  ],
  options: [
    BOOK_OPTION,
    AIRCRAFT_OPTION,
    ...GIVEN_OPTIONS,
    { flags: "--watch <FOLDER>", help: "add each log of the folder once it has stopped growing" },
    { flags: "--again", help: "add a flight that looks like one of the logbook" },
    DRY_RUN_OPTION,
    JSON_OPTION,
    ...READING_OPTIONS,
  ],
  notes: ["LOG is a CSV file, a folder of them, - for standard input, or a .book.json of tallywatt export."],
  run,
};

async function run(call: Call, io: Io, talk: Talk): Promise<ExitCode> {
  const watched = call.text("watch");
  if ((call.operands.length === 0) === (watched === null)) {
    throw usageFailure(logbookSentences.logOrWatch("tallywatt add --help"));
  }
  const work: AddWork = {
    book: openBook(call, io, talk),
    io,
    talk,
    aircraftOf: aircraftOfCall(call, io),
    given: givenFacts(call),
    options: readingOptions(call),
    isAgain: call.has("again"),
  };
  return watched === null
    ? addLogs(logsOfCall(call.operands, io), call, work)
    : watchLogs(watched, call, work);
}
