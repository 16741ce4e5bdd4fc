import { flightPath, keptFlightAt, planRemove } from "../../season/logbook/index.ts";
import type { Call, CommandDefinition } from "./commandDefinition.ts";
import { EXIT, type ExitCode } from "./exitCodes.ts";
import { Failure } from "./failure.ts";
import type { Io } from "./io.ts";
import { undoLine } from "./logbook/bookWords.ts";
import { changeJson } from "./logbook/changeJson.ts";
import { assertThere } from "./logbook/flightsOfCall.ts";
import { BOOK_OPTION, DRY_RUN_OPTION, JSON_OPTION, openBook } from "./logbook/openBook.ts";
import { logbookSentences } from "./logbook/sentences.ts";
import type { Talk } from "./talk.ts";

export const command: CommandDefinition = {
  operands: "<FLIGHT...>",
  about: "take flights out of the logbook; undo brings them back",
  examples: [
    { line: "tallywatt remove 2026-06-14-1 --dry-run", about: "says what would go" },
    { line: "tallywatt remove 2026-06-14-1 --yes", about: "takes it out" },
  ],
  options: [BOOK_OPTION, { flags: "--yes", help: "do it" }, DRY_RUN_OPTION, JSON_OPTION],
  run,
};

async function run(call: Call, io: Io, talk: Talk): Promise<ExitCode> {
  const book = openBook(call, io, talk);
  const names = [...new Set(call.operands)];
  const logs = await book.read((files) =>
    names.map((name) => {
      assertThere(name, files);
      const read = keptFlightAt(files, flightPath(name), book.frame.digest);
      return read.state === "read" ? read.entry.log.file : "not known";
    }),
  );
  if (!call.has("yes") && !book.isDry) {
    throw new Failure(EXIT.choice, logbookSentences.confirmRemove(names));
  }
  const removed = await book.change((files) => planRemove(files, book.frame, names));
  if (call.has("json")) talk.data(changeJson("remove", removed, book.isDry));
  else tell(names, logs, book.isDry ? null : undoLine(call), talk);
  return EXIT.done;
}

/** @param undo the command that takes it back; null where nothing was done */
function tell(names: readonly string[], logs: readonly string[], undo: string | null, talk: Talk): void {
  names.forEach((name, at) => {
    const log = logs[at] ?? "";
    talk.data(undo === null ? logbookSentences.wouldRemove(name, log) : logbookSentences.removed(name, log));
  });
  if (undo !== null) talk.data(logbookSentences.removedEnd(undo));
}
