import { resolve } from "node:path";
import type { Call, CommandDefinition } from "./commandDefinition.ts";
import { EXIT, type ExitCode } from "./exitCodes.ts";
import { usageFailure } from "./failure.ts";
import type { Io } from "./io.ts";
import { packageText } from "./release.ts";
import type { Talk } from "./talk.ts";
import { writeReport } from "./writeOutput.ts";

const PAGE_NEEDS_SAVE =
  "name the file that the page is written to: --save page.html. This release serves no page of its own.";

export const command: CommandDefinition = {
  operands: "",
  about: "the page as one file: open it in a browser, drop a log, read the answer, with no network",
  examples: [{ line: "tallywatt page --save page.html", about: "writes the page to keep or to carry" }],
  options: [
    { flags: "--save <FILE.html>", help: "where the page goes" },
    { flags: "--force", help: "replace a file that tallywatt did not write" },
  ],
  run,
};

async function run(call: Call, io: Io, talk: Talk): Promise<ExitCode> {
  const file = call.text("save");
  if (file === null || file === undefined) throw usageFailure(PAGE_NEEDS_SAVE);
  const text = packageText(io, "dist/page.html");
  writeReport(io, resolve(io.workFolder, file), text, call.has("force"));
  talk.say(
    `Wrote ${file}, ${Math.ceil(text.length / 1000)} kB. Open it in a browser; it asks for no network.`,
  );
  return EXIT.done;
}
