import { parseAircraftFile } from "../../../aircraft/index.ts";
import {
  aircraftOfBook,
  bookSentences,
  editFlights,
  flightsIn,
  planKeepAircraft,
  planRemove,
  planUndo,
  takenOver,
} from "../../../season/logbook/index.ts";
import type {
  ChangeAnswer,
  EditWork,
  KeepAircraftAnswer,
  KeepAircraftWork,
  RemoveWork,
} from "../messages.ts";
import { pageSentences } from "../sentences.ts";
import { type Book, frameOf, openedAs } from "./book.ts";

export async function editWork({ flights, changes }: EditWork, book: Book): Promise<ChangeAnswer<"edit">> {
  const edited = await editFlights(openedAs(book), flights, changes);
  if (edited.state !== "edited") return { kind: "edit", flights: [], text: edited.why };
  return { kind: "edit", flights: edited.flights, text: pageSentences.edited(edited.flights) };
}

export async function removeWork({ flights }: RemoveWork, book: Book): Promise<ChangeAnswer<"remove">> {
  const frame = frameOf(book);
  const removed = await book.change((files) => planRemove(files, frame, flights));
  return { kind: "remove", flights: removed, text: pageSentences.removed(removed) };
}

export async function undoWork(book: Book): Promise<ChangeAnswer<"undo">> {
  const frame = frameOf(book);
  const undone = await book.change((files) => planUndo(files, frame));
  const none = (text: string): ChangeAnswer<"undo"> => ({ kind: "undo", flights: [], text });
  if (undone.state === "nothing") return none(bookSentences.nothingToUndo());
  if (undone.state === "damaged") return none(bookSentences.undoDamaged());
  if (undone.state === "outdated") return none(bookSentences.undoOutdated(undone.path));
  const flights = flightsIn(undone.files);
  const say = undone.state === "undone" ? pageSentences.undone : pageSentences.madeAgain;
  return { kind: "undo", flights, text: say(undone.what) };
}

/** Keeps an aircraft file in the book, in place of the one of that name. */
export async function keepAircraftWork(
  { text, file }: KeepAircraftWork,
  book: Book,
): Promise<KeepAircraftAnswer> {
  const parsed = parseAircraftFile(text, file);
  if (parsed.state === "refusal") return { kind: "keepAircraft", result: null, notices: parsed.notices };
  const frame = frameOf(book);
  const result = await book.change((files) => {
    const { name, path, text: kept } = takenOver(aircraftOfBook(files), { ...parsed, text });
    const own = { name, path, text: kept };
    return { ...planKeepAircraft(files, frame, own), result: own };
  });
  return { kind: "keepAircraft", result, notices: [] };
}
