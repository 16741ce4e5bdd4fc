import { editFlights, type GivenChanges } from "../../season/logbook/index.ts";
import type { Call, CommandDefinition } from "./commandDefinition.ts";
import { EXIT, type ExitCode } from "./exitCodes.ts";
import { Failure, usageFailure } from "./failure.ts";
import type { Io } from "./io.ts";
import { undoLine } from "./logbook/bookWords.ts";
import { changeJson } from "./logbook/changeJson.ts";
import { GIVEN_OPTIONS, givenFacts } from "./logbook/givenOptions.ts";
import { BOOK_OPTION, DRY_RUN_OPTION, JSON_OPTION, openBook } from "./logbook/openBook.ts";
import { logbookSentences } from "./logbook/sentences.ts";
import type { Talk } from "./talk.ts";

/** Option names and the facts they clear. */
const CLEARABLE: Readonly<Record<string, keyof GivenChanges>> = {
  pack: "pack",
  propeller: "propeller",
  ambient: "ambientC",
  "start-pct": "startPct",
  "put-back": "putBackMah",
  flown: "flownS",
  date: "date",
  note: "note",
};

export const command: CommandDefinition = {
  operands: "<FLIGHT...>",
  about: "change what the pilot said of a flight; the log stays",
  examples: [
    { line: "tallywatt edit 2026-06-14-1 --pack B --put-back 2450", about: "pack and charger's reading" },
    { line: "tallywatt edit 2026-06-14-1 --clear note", about: "takes a fact away" },
  ],
  options: [
    BOOK_OPTION,
    ...GIVEN_OPTIONS,
    { flags: "--clear <FACT>", help: "take a fact away; repeatable" },
    DRY_RUN_OPTION,
    JSON_OPTION,
  ],
  notes: [
    `FACT is ${Object.keys(CLEARABLE).join(", ")}.`,
    "With several flights --put-back is what one charge put back after all of them.",
  ],
  run,
};

async function run(call: Call, io: Io, talk: Talk): Promise<ExitCode> {
  const book = openBook(call, io, talk);
  const edited = await editFlights(book, call.operands, changesOf(call));
  if (edited.state !== "edited") {
    throw new Failure(edited.state === "unusable" ? EXIT.unusable : EXIT.cannotWrite, edited.why);
  }
  if (edited.packNote !== null) talk.say(edited.packNote);
  if (call.has("json")) talk.data(changeJson("edit", edited.flights, book.isDry));
  else talk.data(logbookSentences.edited(edited.flights, book.isDry, undoLine(call)));
  return EXIT.done;
}

/** Only what the call gives or clears. */
function changesOf(call: Call): GivenChanges {
  const given = Object.entries(givenFacts(call)).filter(
    ([key, value]) => value !== null && key !== "putBackFlights",
  );
  const cleared = call.texts("clear").map((name) => {
    const key = Object.hasOwn(CLEARABLE, name) ? CLEARABLE[name] : undefined;
    if (key === undefined) throw usageFailure(logbookSentences.clearWrong(name, Object.keys(CLEARABLE)));
    return [key, null] as const;
  });
  if (given.length + cleared.length === 0) {
    throw usageFailure(logbookSentences.nothingToEdit("tallywatt edit --help"));
  }
  return Object.fromEntries([...given, ...cleared]) as GivenChanges;
}
