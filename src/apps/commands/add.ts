import type { Notice } from "../../base/notices/index.ts";
import { calibrateCurrent, readFlights } from "../../season/logbook/index.ts";
import type { Call, CommandDefinition } from "./commandDefinition.ts";
import { EXIT, type ExitCode, exitOfSeveral } from "./exitCodes.ts";
import { tellError, usageFailure } from "./failure.ts";
import type { Io } from "./io.ts";
import { type AddedLog, type AddWork, addLog } from "./logbook/addLog.ts";
import { AIRCRAFT_OPTION, aircraftOfCall } from "./logbook/aircraftOfCall.ts";
import { GIVEN_OPTIONS, givenFacts } from "./logbook/givenOptions.ts";
import { type LogToTake, logsOfCall } from "./logbook/logsOfCall.ts";
import { BOOK_OPTION, DRY_RUN_OPTION, JSON_OPTION, openBook } from "./logbook/openBook.ts";
import { progressOf } from "./logbook/progress.ts";
import { logbookSentences } from "./logbook/sentences.ts";
import { addedJson, tellAdded } from "./logbook/tellAdded.ts";
import { exitOfNotices } from "./noticeLines.ts";
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
    { flags: "--again", help: "add a flight that looks like one of the logbook" },
    DRY_RUN_OPTION,
    JSON_OPTION,
    ...READING_OPTIONS,
  ],
  notes: ["LOG is a CSV file, a folder of them, or - for standard input."],
  run,
};

async function run(call: Call, io: Io, talk: Talk): Promise<ExitCode> {
  if (call.operands.length === 0) throw usageFailure(logbookSentences.logOrWatch("tallywatt add --help"));
  const work: AddWork = {
    book: openBook(call, io, talk),
    io,
    talk,
    aircraftOf: aircraftOfCall(call, io),
    given: givenFacts(call),
    options: readingOptions(call),
    isAgain: call.has("again"),
  };
  return addLogs(logsOfCall(call.operands, io), call, work);
}

async function addLogs(logs: readonly LogToTake[], call: Call, work: AddWork): Promise<ExitCode> {
  const { io, talk } = work;
  const results: AddedLog[] = [];
  const exits: ExitCode[] = [];
  const progress = progressOf(logs.length, io);
  for (const one of logs) {
    const together = work.given.putBackMah === null ? [] : results.flatMap(newFlights);
    const { added, exit } = await addOrWhy(one, together, call, work);
    progress.step();
    if (added !== null) results.push(added);
    exits.push(exit);
    await io.pause();
  }
  progress.end();
  if (call.has("json")) {
    talk.data(JSON.stringify(addedJson(results, work.book.isDry, await calibration(work)), null, 2));
  } else if (results.length > 1) talk.data(totalsOf(results));
  return exitOfSeveral(exits);
}

async function addOrWhy(
  one: LogToTake,
  together: readonly string[],
  call: Call,
  work: AddWork,
): Promise<{ readonly added: AddedLog | null; readonly exit: ExitCode }> {
  if (one.kind === "emptyFolder") {
    work.talk.say(logbookSentences.folderEmpty(one.folder));
    return { added: null, exit: EXIT.unusable };
  }
  try {
    const added = await addLog(one.log, together, work);
    tellAdded(one.log, added, call, work);
    return { added, exit: exitOfNotices(stopping(added)) };
  } catch (error) {
    return { added: null, exit: tellError(error, work.talk, call.has("debug")) };
  }
}

function stopping({ outcome }: AddedLog): readonly Notice[] {
  return outcome.state === "stopped" ? outcome.notices : [];
}

function newFlights({ outcome }: AddedLog): readonly string[] {
  return outcome.state === "added" ? outcome.flights : [];
}

function totalsOf(results: readonly AddedLog[]): string {
  const countOf = (state: AddedLog["outcome"]["state"]): number =>
    results.filter(({ outcome }) => outcome.state === state).length;
  return logbookSentences.totals(results.flatMap(newFlights).length, countOf("already"), countOf("stopped"));
}

/** What the put-backs say now of the current sensor. */
async function calibration({ book }: AddWork) {
  return book.read((files) => calibrateCurrent(readFlights(files, book.frame.digest).entries));
}
