import { verifyFolder } from "../folderBook/index.ts";
import type { Call, CommandDefinition } from "./commandDefinition.ts";
import { EXIT, type ExitCode } from "./exitCodes.ts";
import type { Io } from "./io.ts";
import { bookFolder } from "./logbook/bookFolder.ts";
import { BOOK_OPTION, JSON_OPTION, refuseMissingBook } from "./logbook/openBook.ts";
import { logbookSentences } from "./logbook/sentences.ts";
import type { Talk } from "./talk.ts";

export const command: CommandDefinition = {
  operands: "",
  about: "look through every file of the logbook and name what is damaged",
  examples: [
    { line: "tallywatt verify", about: "reads everything, changes nothing" },
    { line: "tallywatt verify --json", about: "the same for other programs" },
  ],
  options: [BOOK_OPTION, JSON_OPTION],
  notes: [
    "No program can promise more than the disk: keep a dated copy of the folder, above all of a synced one.",
  ],
  run,
};

async function run(call: Call, io: Io, talk: Talk): Promise<ExitCode> {
  const folder = bookFolder(call.text("book"), io);
  refuseMissingBook(folder, io);
  const found = verifyFolder(io.files, folder);
  const isDamaged = found.problems.some(({ isDamage }) => isDamage);
  if (call.has("json")) {
    talk.data(JSON.stringify({ format: "tallywatt/verify", version: 1, folder, ...found }, null, 2));
  } else {
    for (const { path, what, todo } of found.problems) talk.data(logbookSentences.problem(path, what, todo));
    if (!isDamaged) talk.data(logbookSentences.whole(found.flights, found.logs));
  }
  return isDamaged ? EXIT.unusable : EXIT.done;
}
