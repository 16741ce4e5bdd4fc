import type { Notice } from "../../../base/notices/index.ts";
import {
  FLIGHT_FOLDER,
  planTakeIn,
  readKeptFlights,
  readWholeBook,
  textsToExport,
  type WholeBook,
  wholeBookText,
} from "../../../season/logbook/index.ts";
import type { ExportAnswer, ImportAnswer, ImportWork } from "../messages.ts";
import { pageSentences } from "../sentences.ts";
import { fromBase64, toBase64 } from "./base64.ts";
import { type Book, frameOf } from "./book.ts";
import { sha256Of } from "./sha256.ts";

const MEGABYTE = 1_000_000;
/** Base 64 of more than this does not fit into one string of the browser. */
const MOST_LOGS_MB = 350;
const FILE = "tallywatt.book.json";

/** The whole book as one file. Rejects when its logs are too large for one. */
export async function exportWork(book: Book, tell: (share: number) => void): Promise<ExportAnswer> {
  const { files, paths } = await book.read((texts) => ({
    files: textsToExport(texts),
    paths: readKeptFlights(texts, sha256Of).entries.map(({ log }) => log.path),
  }));
  const logs: Record<string, string> = {};
  const distinct = [...new Set(paths)].sort();
  let size = 0;
  for (const [at, path] of distinct.entries()) {
    const bytes = await book.readLog(path);
    tell((at + 1) / (distinct.length + 1));
    if (bytes === null) continue;
    size += bytes.length;
    if (size > MOST_LOGS_MB * MEGABYTE) throw new BookTooLargeError();
    logs[path] = toBase64(bytes);
  }
  const whole: WholeBook = { format: "tallywatt/book", version: 1, files, logs };
  const flights = Object.keys(files).filter((path) => path.startsWith(FLIGHT_FOLDER)).length;
  return { kind: "export", file: FILE, text: wholeBookText(whole, sha256Of), flights };
}

export class BookTooLargeError extends Error {
  constructor() {
    super(pageSentences.bookTooLarge(MOST_LOGS_MB));
    this.name = "BookTooLargeError";
  }
}

const WHY = {
  notABook: pageSentences.bookFileOther,
  newer: pageSentences.bookFileNewer,
  damaged: pageSentences.bookFileDamaged,
} as const;

/** Takes a whole book in from one file. */
export async function importWork({ file, bytes }: ImportWork, book: Book): Promise<ImportAnswer> {
  const read = readWholeBook(new TextDecoder().decode(bytes), sha256Of);
  if (read.state !== "read") {
    const notice: Notice = { code: `book-${read.state}`, severity: "refusal", text: WHY[read.state](file) };
    return { kind: "import", result: null, notices: [notice] };
  }
  const texts = new Map(Object.entries(read.book.files));
  const logs = new Map(Object.entries(read.book.logs).map(([path, text]) => [path, fromBase64(text)]));
  const frame = frameOf(book);
  const result = await book.change((files) => planTakeIn(files, frame, texts, logs));
  return { kind: "import", result, notices: [] };
}
