import { EXIT, type ExitCode } from "./exitCodes.ts";
import { tellError } from "./failure.ts";
import type { Io } from "./io.ts";
import { readCommandLine } from "./program.ts";
import { releaseOf } from "./release.ts";
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
    return tellError(error, talk, words.includes("--debug"));
  }
}
