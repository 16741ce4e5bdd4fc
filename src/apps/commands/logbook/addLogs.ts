import type { Notice } from "../../../base/notices/index.ts";
import {
  type AddedLog,
  type CurrentCalibration,
  calibrateCurrent,
  readBriefFlights,
} from "../../../season/logbook/index.ts";
import type { Call } from "../commandDefinition.ts";
import { EXIT, type ExitCode, exitOfSeveral } from "../exitCodes.ts";
import { Failure, tellError } from "../failure.ts";
import { readLogBytes } from "../logInput.ts";
import { exitOfNotices } from "../noticeLines.ts";
import { oneLine } from "../printable.ts";
import { commandLine } from "../shellWord.ts";
import { type AddWork, addLogOf } from "./addLogOf.ts";
import { bookWords } from "./bookWords.ts";
import { putBackLines } from "./calibrationLine.ts";
import type { LogToTake } from "./logsOfCall.ts";
import { progressOf } from "./progress.ts";
import { logbookSentences } from "./sentences.ts";
import { addedJson, tellAdded } from "./tellAdded.ts";
import { isWholeBook, takeIn } from "./wholeBookOf.ts";

/** Adds every log of a call, each by itself: what was added stays when a later one cannot be. */
export async function addLogs(logs: readonly LogToTake[], call: Call, work: AddWork): Promise<ExitCode> {
  const { io, talk } = work;
  const results: AddedLog[] = [];
  const exits: ExitCode[] = [];
  const progress = progressOf(logs.length, io, talk);
  const working = { ...work, talk: progress.talk };
  for (const [at, one] of logs.entries()) {
    // One put-back is one charge after all of them: it goes with the last log and names the flights before.
    const isLast = at === logs.length - 1;
    const together = isLast && work.given.putBackMah !== null ? results.flatMap(newFlights) : [];
    const { added, exit } = await addOrWhy(one, together, call, isLast ? working : withoutPutBack(working));
    if (isLast && (added === null || newFlights(added).length === 0))
      tellPutBackLost(together, call, working);
    progress.step();
    if (added !== null) results.push(added);
    exits.push(exit);
    await io.pause();
  }
  progress.end();
  for (const note of new Set(results.flatMap(({ packNote }) => packNote ?? []))) talk.say(oneLine(note));
  if (call.has("json")) {
    talk.data(JSON.stringify(addedJson(results, work.book.isDry, await calibration(work)), null, 2));
  } else {
    if (results.length > 1) talk.data(totalsOf(results));
    await tellCalibration(work);
  }
  return exitOfSeveral(exits);
}

function withoutPutBack(work: AddWork): AddWork {
  return { ...work, given: { ...work.given, putBackMah: null } };
}

/** The last log took no put-back in: how to note it with the flights that were added. */
function tellPutBackLost(flights: readonly string[], call: Call, { given, talk }: AddWork): void {
  if (given.putBackMah === null || flights.length === 0) return;
  const words = ["edit", ...flights, "--put-back", String(given.putBackMah), ...bookWords(call)];
  talk.say(logbookSentences.putBackNotKept(commandLine(words)));
}

/** Adds one log and says what became of it; a failure is told and does not stop the others. */
export async function addOrWhy(
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
    if (isWholeBook(one.log)) return { added: null, exit: await addBook(one.log, call, work) };
    const added = await addLogOf(one.log, together, work);
    tellAdded(one.log, added, call, work);
    return { added, exit: exitOfNotices(stopping(added)) };
  } catch (error) {
    return { added: null, exit: tellError(error, work.talk, call.has("debug")) };
  }
}

/** A whole book as one file, in place of a log. */
async function addBook(log: string, call: Call, { io, talk, book }: AddWork): Promise<ExitCode> {
  const input = await readLogBytes(log, io, talk);
  if (input.state === "unusable") throw new Failure(EXIT.unusable, input.text);
  const { flights, already, damaged } = await takeIn(log, input.bytes, book);
  for (const path of damaged) talk.say(logbookSentences.damagedInBook(path));
  const say = call.has("json") ? talk.say : talk.data;
  say(logbookSentences.tookIn(flights.length, already, book.isDry));
  return EXIT.done;
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

/** A new put-back may have told more of the current sensor. */
async function tellCalibration({ book, given, talk }: AddWork): Promise<void> {
  if (given.putBackMah === null) return;
  const entries = await book.read((files) => readBriefFlights(files, book.frame.digest).entries);
  for (const line of putBackLines(entries)) talk.say(oneLine(line));
}

/** What the put-backs say now of the current sensor. */
async function calibration({ book }: AddWork): Promise<CurrentCalibration | null> {
  return book.read((files) => calibrateCurrent(readBriefFlights(files, book.frame.digest).entries));
}
