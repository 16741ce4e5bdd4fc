import { basename, resolve } from "node:path";
import { plainNumber } from "../../base/quantity/index.ts";
import { type LogBytes, MOST_BYTES } from "../../log/reading/index.ts";
import { reasonOf } from "./failure.ts";
import type { Io } from "./io.ts";
import { inputSentences } from "./sentences.ts";
import type { Talk } from "./talk.ts";

export const STANDARD_INPUT = "-";

const MEGABYTE = 1_000_000;
/** From here on reading takes long enough to say so. */
const SLOW_LOG_MB = 20;
/** Several logs are held ahead of their turn. */
const MOST_AHEAD_MB = 8;

/** A log's bytes, or the sentence that says why there are none. */
export type LogInput<Bytes = Uint8Array> =
  | { readonly state: "bytes"; readonly bytes: Bytes }
  | { readonly state: "unusable"; readonly code: string; readonly text: string };

/** What a log is called in results: the file's own name, no folder. */
export function logName(log: string): string {
  return log === STANDARD_INPUT ? "standard input" : basename(log);
}

/** What a log is called on the terminal: as typed. */
export function shownLog(log: string): string {
  return log === STANDARD_INPUT ? "standard input" : log;
}

/** The whole log, for keeping it. */
export function readLogBytes(log: string, io: Io, talk: Talk): Promise<LogInput> {
  return inputOf(log, io, talk, (path) => io.files.read(path));
}

/** The log where it can be read before its turn: a file, and not a large one. Else null, and its turn says why. */
export function bytesAhead(log: string, io: Io): Uint8Array | null {
  if (log === STANDARD_INPUT) return null;
  try {
    const path = resolve(io.workFolder, log);
    const size = io.files.size(path);
    return size === null || size > MOST_AHEAD_MB * MEGABYTE ? null : io.files.read(path);
  } catch {
    return null;
  }
}

/** The log for reading it once: a large file is not held in memory. */
export function openLogBytes(log: string, io: Io, talk: Talk): Promise<LogInput<LogBytes>> {
  const isLarge = (size: number) => size > SLOW_LOG_MB * MEGABYTE;
  return inputOf<LogBytes>(log, io, talk, (path, size) =>
    isLarge(size) ? io.files.parts(path) : io.files.read(path),
  );
}

async function inputOf<Bytes>(
  log: string,
  io: Io,
  talk: Talk,
  open: (path: string, size: number) => Bytes | null,
): Promise<LogInput<Bytes | Uint8Array>> {
  const shown = shownLog(log);
  try {
    if (log === STANDARD_INPUT) return withinLimit(shown, await io.readInput());
    const path = resolve(io.workFolder, log);
    const size = io.files.size(path);
    if (size === null) return unusable("log-missing", inputSentences.logMissing(log));
    if (size > MOST_BYTES) return tooLarge(shown, size);
    if (size > SLOW_LOG_MB * MEGABYTE) talk.say(inputSentences.reading(shown, megabytes(size)));
    const bytes = open(path, size);
    return bytes === null
      ? unusable("log-missing", inputSentences.logMissing(log))
      : { state: "bytes", bytes };
  } catch (error) {
    const isFolder = error instanceof Error && "code" in error && error.code === "EISDIR";
    if (isFolder) return unusable("log-is-folder", inputSentences.logFolder(log));
    return unusable("log-unreadable", inputSentences.logUnreadable(shown, reasonOf(error)));
  }
}

function withinLimit(shown: string, bytes: Uint8Array): LogInput {
  return bytes.length > MOST_BYTES ? tooLarge(shown, bytes.length) : { state: "bytes", bytes };
}

function tooLarge(shown: string, size: number): LogInput {
  return unusable("log-too-large", inputSentences.logTooLarge(shown, megabytes(size), megabytes(MOST_BYTES)));
}

function megabytes(size: number): string {
  return plainNumber(Math.round(size / MEGABYTE));
}

function unusable(code: string, text: string): LogInput {
  return { state: "unusable", code, text };
}
