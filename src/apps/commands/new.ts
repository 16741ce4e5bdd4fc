import { basename, dirname, extname, join, resolve } from "node:path";
import { starterAircraftFile } from "../../aircraft/index.ts";
import type { Call, CommandDefinition } from "./commandDefinition.ts";
import { EXIT, type ExitCode } from "./exitCodes.ts";
import { usageFailure } from "./failure.ts";
import type { Io } from "./io.ts";
import { STANDARD_INPUT } from "./logInput.ts";
import { packageText } from "./release.ts";
import { outputSentences, usageSentences } from "./sentences.ts";
import { commandLine } from "./shellWord.ts";
import type { Talk } from "./talk.ts";
import { existing, writeNew } from "./writeOutput.ts";

const SCHEMA_NAME = "aircraft.schema.json";

export const command: CommandDefinition = {
  operands: "<FILE>",
  about: "start an aircraft file, with comments and its schema beside it",
  examples: [{ line: "tallywatt new tern.json", about: "writes tern.json and aircraft.schema.json" }],
  options: [{ flags: "--force", help: "replace files that are there" }],
  notes: [
    "The schema lets an editor complete and check the keys while you type. Every number is an example.",
  ],
  run,
};

async function run(call: Call, io: Io, talk: Talk): Promise<ExitCode> {
  const [file = ""] = call.operands;
  if (file === STANDARD_INPUT) throw usageFailure(usageSentences.inputAsName());
  const path = resolve(io.workFolder, file);
  writeNew(io, path, starterAircraftFile(basename(file, extname(file))), call.has("force"));
  talk.data(`Wrote ${file}: put in your own numbers, then`);
  talk.data(`Next: ${commandLine(["check", "flight.csv", "--aircraft", file])}`);
  return writeSchema(io, talk, join(dirname(path), SCHEMA_NAME), call.has("force"));
}

function writeSchema(io: Io, talk: Talk, path: string, isForced: boolean): ExitCode {
  const schema = packageText(io, join("schemas", SCHEMA_NAME));
  const there = existing(io, path);
  if (there === null || isForced || isOurSchema(there)) writeNew(io, path, schema, true);
  else talk.say(outputSentences.schemaStays(SCHEMA_NAME));
  return EXIT.done;
}

function isOurSchema(bytes: Uint8Array): boolean {
  return new TextDecoder().decode(bytes).includes('"title": "tallywatt aircraft file"');
}
