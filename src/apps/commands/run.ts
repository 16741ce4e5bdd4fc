import { EXIT, type ExitCode } from "./exitCodes.ts";
import { Failure } from "./failure.ts";
import type { Io } from "./io.ts";
import { readCommandLine } from "./program.ts";
import { releaseOf } from "./release.ts";
import { inputSentences } from "./sentences.ts";
import { talkThrough } from "./talk.ts";

/** Runs one command line (the words after the program's name) and gives the exit code; never throws. */
export async function runCommandLine(words: readonly string[], io: Io): Promise<ExitCode> {
  const talk = talkThrough(io, words.includes("--no-color"));
  try {
    const asked = await readCommandLine(words, () => releaseOf(io));
    if (asked.kind === "call") return await asked.command.run(asked.call, io, talk);
    talk.data(asked.text);
    return EXIT.done;
  } catch (error) {
    const isDebug = words.includes("--debug");
    if (!(error instanceof Failure)) talk.say(inputSentences.ownBug(messageOf(error)));
    else talk.say(error.message);
    if (isDebug && error instanceof Error) talk.say(error.stack ?? "");
    return error instanceof Failure ? error.exit : EXIT.bug;
  }
}

function messageOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
