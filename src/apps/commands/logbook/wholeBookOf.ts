import {
  FLIGHT_FOLDER,
  planTakeIn,
  readKeptFlights,
  readWholeBook,
  type TakenIn,
  textsToExport,
  type WholeBook,
  wholeBookText,
} from "../../../season/logbook/index.ts";
import { EXIT } from "../exitCodes.ts";
import { Failure } from "../failure.ts";
import type { OpenBook } from "./openBook.ts";
import { logbookSentences } from "./sentences.ts";

const MEGABYTE = 1_000_000;
/** Base 64 of more than this does not fit into one string of the runtime. */
const MOST_LOGS_MB = 350;

/** The whole book of a call as one text. Throws a Failure when its logs are too large for one file. */
export async function wholeBookOf(
  book: OpenBook,
): Promise<{ readonly text: string; readonly flights: number }> {
  const { files, paths } = await book.read((texts) => ({
    files: textsToExport(texts),
    paths: readKeptFlights(texts, book.frame.digest).entries.map(({ log }) => log.path),
  }));
  const logs: Record<string, string> = {};
  let size = 0;
  for (const path of [...new Set(paths)].sort()) {
    const bytes = await book.readLog(path);
    if (bytes === null) continue;
    size += bytes.length;
    if (size > MOST_LOGS_MB * MEGABYTE) {
      const text = logbookSentences.bookTooLarge(size / MEGABYTE, MOST_LOGS_MB);
      throw new Failure(EXIT.cannotWrite, text);
    }
    logs[path] = Buffer.from(bytes).toString("base64");
  }
  const whole: WholeBook = { format: "tallywatt/book", version: 1, files, logs };
  const flights = Object.keys(files).filter((path) => path.startsWith(FLIGHT_FOLDER)).length;
  return { text: wholeBookText(whole, book.frame.digest), flights };
}

/** True for the name of a whole book as one file. */
export function isWholeBook(log: string): boolean {
  return log.toLowerCase().endsWith(".book.json");
}

/** Takes a whole book from one file in. Throws a Failure for a file that is none or damaged. */
export async function takeIn(file: string, bytes: Uint8Array, book: OpenBook): Promise<TakenIn> {
  const read = readWholeBook(new TextDecoder().decode(bytes), book.frame.digest);
  if (read.state !== "read") {
    const text = logbookSentences.bookFileWrong(file, logbookSentences[WHY[read.state]]());
    throw new Failure(EXIT.unusable, text);
  }
  const texts = new Map(Object.entries(read.book.files));
  const logs = new Map(
    Object.entries(read.book.logs).map(([path, text]) => [path, Buffer.from(text, "base64")]),
  );
  return book.change((files) => planTakeIn(files, book.frame, texts, logs));
}

const WHY = {
  notABook: "bookFileOther",
  newer: "bookFileNewer",
  damaged: "bookFileDamaged",
} as const;
