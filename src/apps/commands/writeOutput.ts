import { dirname, relative } from "node:path";
import { writeDurably } from "../disk/index.ts";
import { EXIT } from "./exitCodes.ts";
import { Failure, reasonOf } from "./failure.ts";
import type { Io } from "./io.ts";
import { outputSentences } from "./sentences.ts";

/** Every report begins with its document type and this mark, by which we know our own files. */
const OUR_MARK = "<!-- written by tallywatt -->";
const DOCUMENT_TYPE = "<!doctype html>";

/** Writes a report. A file of someone else under that name stays, unless `isForced`. */
export function writeReport(io: Io, path: string, html: string, isForced: boolean): void {
  refuseForeignReport(io, path, isForced);
  write(io, path, marked(html));
}

/** Throws a Failure when a file of someone else stands under the name and nobody forces it. */
export function refuseForeignReport(io: Io, path: string, isForced: boolean): void {
  const there = existing(io, path);
  if (there !== null && !isForced && !isOurReport(there)) {
    throw new Failure(EXIT.cannotWrite, outputSentences.notOurs(shownPath(io, path)));
  }
}

/** Writes a file that its owner will edit: whatever stands there stays, unless `isForced`. */
export function writeNew(io: Io, path: string, text: string, isForced: boolean): void {
  if (existing(io, path) !== null && !isForced)
    throw new Failure(EXIT.cannotWrite, outputSentences.exists(shownPath(io, path)));
  write(io, path, text);
}

export function existing(io: Io, path: string): Uint8Array | null {
  try {
    return io.files.read(path);
  } catch (error) {
    throw new Failure(EXIT.cannotWrite, outputSentences.cannotLook(shownPath(io, path), reasonOf(error)), {
      cause: error,
    });
  }
}

/** As the user would type it: below the work folder without its path. */
function shownPath(io: Io, path: string): string {
  const below = relative(io.workFolder, path);
  return below.startsWith("..") || below === "" ? path : below;
}

function marked(html: string): string {
  const rest = html.toLowerCase().startsWith(DOCUMENT_TYPE) ? html.slice(DOCUMENT_TYPE.length) : html;
  return `${DOCUMENT_TYPE}\n${OUR_MARK}${rest}`;
}

function isOurReport(bytes: Uint8Array): boolean {
  const start = new TextDecoder().decode(bytes.subarray(0, DOCUMENT_TYPE.length + OUR_MARK.length + 1));
  return start === `${DOCUMENT_TYPE}\n${OUR_MARK}`;
}

/** The whole file or none: written beside and put in place when complete. */
function write(io: Io, path: string, text: string): void {
  const bytes = new TextEncoder().encode(text);
  try {
    io.files.makeFolder(dirname(path));
    writeDurably(io.files, path, bytes);
  } catch (error) {
    const text = outputSentences.cannotWrite(shownPath(io, path), reasonOf(error), bytes.length);
    throw new Failure(EXIT.cannotWrite, text, { cause: error });
  }
}
