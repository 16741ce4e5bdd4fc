import { addLog } from "../../../season/logbook/index.ts";
import { type AddAnswer, type AddWork, NO_ANSWERS } from "../messages.ts";
import { type Book, openedAs } from "./book.ts";
import { readingOptionsOf } from "./readingOptionsOf.ts";
import { wantedAircraft } from "./wantedAircraft.ts";

/** Adds one log to the book, as the command does. */
export async function addWork(work: AddWork, book: Book): Promise<AddAnswer> {
  const { file, given, answers, chargedWith, isAgain, run } = work;
  const log = { file, bytes: new Uint8Array(work.bytes) };
  const aircraftOf = (files: Parameters<typeof wantedAircraft>[1]) => wantedAircraft(work.aircraft, files);
  const options = readingOptionsOf(answers ?? NO_ANSWERS);
  const added = await addLog(openedAs(book, run), log, { aircraftOf, given, options, chargedWith, isAgain });
  return { kind: "add", ...added };
}
