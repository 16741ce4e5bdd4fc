import { resolve } from "node:path";
import type { Call, CommandDefinition } from "./commandDefinition.ts";
import { EXIT, type ExitCode } from "./exitCodes.ts";
import { usageFailure } from "./failure.ts";
import type { Io } from "./io.ts";
import { BOOK_OPTION } from "./logbook/openBook.ts";
import { pageSentences } from "./pageSentences.ts";
import { packageText } from "./release.ts";
import { servePage } from "./servePage.ts";
import type { Talk } from "./talk.ts";
import { writeReport } from "./writeOutput.ts";

const PAGE_FILE = "dist/page.html";

export const command: CommandDefinition = {
  operands: "",
  about: "the page: drop a log, read the answer; with the logbook, timer, trends and season",
  examples: [
    { line: "tallywatt page", about: "serves it to this machine alone, with your logbook; Ctrl-C ends it" },
    { line: "tallywatt page --book season --port 8123", about: "another logbook, always at the same port" },
    {
      line: "tallywatt page --save page.html",
      about: "the page as one file, for a device without tallywatt",
    },
  ],
  options: [
    BOOK_OPTION,
    { flags: "--port <N>", help: "where it is served; else a free port" },
    { flags: "--save <FILE.html>", help: "write the page to a file instead" },
    { flags: "--force", help: "replace a file that tallywatt did not write" },
  ],
  notes: ["Nothing is sent to another machine: the page asks only the program that serves it."],
  run,
};

async function run(call: Call, io: Io, talk: Talk): Promise<ExitCode> {
  const page = packageText(io, PAGE_FILE);
  const file = call.text("save");
  if (file === null) return servePage(page, call, io, talk);
  const other = ["book", "port"].find((option) => call.has(option));
  if (other !== undefined) throw usageFailure(pageSentences.saveAlone(`--${other}`));
  writeReport(io, resolve(io.workFolder, file), page, call.has("force"));
  talk.say(pageSentences.saved(file, Math.ceil(page.length / 1000)));
  return EXIT.done;
}
