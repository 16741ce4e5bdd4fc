import { bookSentences, flightsIn, planUndo } from "../../season/logbook/index.ts";
import type { Call, CommandDefinition } from "./commandDefinition.ts";
import { EXIT, type ExitCode } from "./exitCodes.ts";
import { Failure } from "./failure.ts";
import type { Io } from "./io.ts";
import { undoLine } from "./logbook/bookWords.ts";
import { changeJson } from "./logbook/changeJson.ts";
import { BOOK_OPTION, DRY_RUN_OPTION, isBookThere, JSON_OPTION, openBook } from "./logbook/openBook.ts";
import { logbookSentences } from "./logbook/sentences.ts";
import type { Talk } from "./talk.ts";

export const command: CommandDefinition = {
  operands: "",
  about: "take the last change of the logbook back, to the byte",
  examples: [
    { line: "tallywatt undo --dry-run", about: "says what would be taken back" },
    { line: "tallywatt undo", about: "takes it back; a second undo makes it again" },
  ],
  options: [BOOK_OPTION, DRY_RUN_OPTION, JSON_OPTION],
  run,
};

async function run(call: Call, io: Io, talk: Talk): Promise<ExitCode> {
  const book = openBook(call, io, talk);
  const isThere = isBookThere(book.folder, io);
  const undone = isThere
    ? await book.change((files) => planUndo(files, book.frame))
    : ({ state: "nothing" } as const);
  if (undone.state === "nothing") {
    if (call.has("json")) talk.data(changeJson("undo", [], book.isDry));
    else talk.say(bookSentences.nothingToUndo());
    return EXIT.done;
  }
  if (undone.state === "damaged") throw new Failure(EXIT.unusable, bookSentences.undoDamaged());
  if (undone.state === "outdated") throw new Failure(EXIT.choice, bookSentences.undoOutdated(undone.path));
  const flights = flightsIn(undone.files);
  if (call.has("json")) talk.data(changeJson("undo", flights, book.isDry));
  else {
    const say = undone.state === "undone" ? logbookSentences.undone : logbookSentences.madeAgain;
    talk.data(say(undone.what, book.isDry, undoLine(call)));
  }
  return EXIT.done;
}
