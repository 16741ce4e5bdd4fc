import { EXIT, type ExitCode } from "./exitCodes.ts";
import { inputSentences } from "./sentences.ts";
import type { Talk } from "./talk.ts";

/** Ends a command with a sentence for the user; everything else that is thrown is a bug of ours. */
export class Failure extends Error {
  readonly exit: ExitCode;
  constructor(exit: ExitCode, text: string, options: ErrorOptions = {}) {
    super(text, options);
    this.name = "Failure";
    this.exit = exit;
  }
}

export function usageFailure(text: string): Failure {
  return new Failure(EXIT.usage, text);
}

/** Says what went wrong and gives the exit code; a stack only where it was asked for. */
export function tellError(error: unknown, talk: Talk, isDebug: boolean): ExitCode {
  const message = error instanceof Error ? error.message : String(error);
  const isExpected = error instanceof Failure;
  talk.say(isExpected ? message : inputSentences.ownBug(message));
  if (isDebug && error instanceof Error) talk.say(error.stack ?? "");
  return isExpected ? error.exit : EXIT.bug;
}

/** Why a file call failed, in words: "permission denied", "the disk is full". */
export function reasonOf(error: unknown): string {
  const code = error instanceof Error && "code" in error ? String(error.code) : "";
  return REASONS[code] ?? (error instanceof Error ? error.message : String(error));
}

const REASONS: Readonly<Record<string, string>> = {
  EACCES: "permission denied",
  EPERM: "permission denied",
  EROFS: "the disk is read-only",
  ENOSPC: "the disk is full",
  EDQUOT: "your share of the disk is full",
  EFBIG: "the file would be larger than allowed",
  EISDIR: "it is a folder",
  ENOTDIR: "a part of its path is not a folder",
  EEXIST: "a part of its path is not a folder",
  ENOENT: "its folder does not exist",
  ENAMETOOLONG: "the name is too long",
  EIO: "the disk reports an error",
};
