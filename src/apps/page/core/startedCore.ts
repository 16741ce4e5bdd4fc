import { BusyBookError, UnusableBookError } from "../../../season/logbook/index.ts";
import { ServerError } from "../../server/bookClient.ts";
import type { Answer, Asked, Progress, Reply, Work } from "../messages.ts";
import { reasonOf } from "../reasonOf.ts";
import { noPlace, openPlace } from "../store/openPlace.ts";
import { StorageError } from "../store/storageError.ts";
import { addWork } from "./addWork.ts";
import type { Book } from "./book.ts";
import { editWork, keepAircraftWork, removeWork, undoWork } from "./changeWork.ts";
import { checkWork } from "./checkWork.ts";
import { planWork, swapWork } from "./planWork.ts";
import { editAircraft, formKeys, takeAircraft } from "./readAircraft.ts";
import { listWork, seasonWork, timerWork, trendWork } from "./seasonWork.ts";
import { sha256Of } from "./sha256.ts";
import { showWork } from "./showWork.ts";
import { BookTooLargeError, exportWork, importWork } from "./wholeBookWork.ts";

const EXPECTED = [UnusableBookError, BusyBookError, ServerError, StorageError, BookTooLargeError];

/** The core with its book: each piece of work gets one reply; `tell` hears how far it has come. */
export function startedCore(
  release: string,
): (asked: Asked, tell: (progress: Progress) => void) => Promise<Reply> {
  let place = Promise.resolve(noPlace());
  const answerOf = async (work: Work, tell: (share: number, words: string) => void): Promise<Answer> => {
    // Work that is asked for while the book opens waits for it.
    if (work.kind === "openBook") place = openPlace(work.server);
    const opened = await place;
    if (work.kind === "openBook") return { kind: "openBook", place: opened.place };
    return bookAnswer(work, { ...opened.store, release }, tell);
  };
  return async ({ number, work }, tell) => {
    try {
      const answer = await answerOf(work, (share, words) => tell({ number, share, words }));
      return { number, answer, fault: null, isExpected: true };
    } catch (error) {
      return {
        number,
        answer: null,
        fault: reasonOf(error),
        isExpected: EXPECTED.some((one) => error instanceof one),
      };
    }
  };
}

async function bookAnswer(
  work: Exclude<Work, { kind: "openBook" }>,
  book: Book,
  tell: (share: number, words: string) => void,
): Promise<Answer> {
  switch (work.kind) {
    case "check":
      return checkWork(work, await logDigest(work.bytes), book.release, tell);
    case "aircraft":
      return takeAircraft(work);
    case "editAircraft":
      return editAircraft(work);
    case "aircraftKeys":
      return formKeys();
    case "plan":
      return planWork(work, book);
    case "swap":
      return swapWork(work, book);
    case "list":
      return listWork(work, book);
    case "show":
      return showWork(work, book);
    case "remove":
      return removeWork(work, book);
    case "undo":
      return undoWork(book);
    case "timer":
      return timerWork(work, book);
    case "trend":
      return trendWork(work, book);
    case "season":
      return seasonWork(work, book);
    case "keepAircraft":
      return keepAircraftWork(work, book);
    case "export":
      return exportWork(book, (share) => tell(share, "reading the logs"));
    case "import":
      return importWork(work, book);
    case "add":
      return addWork(work, book);
    case "edit":
      return editWork(work, book);
  }
}

/** The browser's own digest is quicker for a large log, where it gives one. */
async function logDigest(bytes: ArrayBuffer): Promise<string> {
  if (globalThis.crypto.subtle === undefined) return sha256Of(new Uint8Array(bytes));
  const digest = await crypto.subtle.digest("SHA-256", bytes);
  return [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}
