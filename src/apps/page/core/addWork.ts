import { checkLog } from "../../../flight/check/index.ts";
import {
  type Added,
  type AddRequest,
  type BookAircraft,
  dayOf,
  flightsOfLog,
  judgedFacts,
  keptReading,
  planAdd,
  planKeepLog,
  readFlights,
} from "../../../season/logbook/index.ts";
import { type AddAnswer, type AddWork, NO_ANSWERS } from "../messages.ts";
import { type Book, frameOf } from "./book.ts";
import { readingOptionsOf } from "./readingOptionsOf.ts";
import { sha256Of } from "./sha256.ts";
import { wantedAircraft } from "./wantedAircraft.ts";

/** Adds one log to the book. One that is there already is known by its digest, before it is analysed. */
export async function addWork(work: AddWork, book: Book): Promise<AddAnswer> {
  const bytes = new Uint8Array(work.bytes);
  const sha256 = sha256Of(bytes);
  const { known, chosen } = await book.read((files) => ({
    known: flightsOfLog(readFlights(files, sha256Of), sha256),
    chosen: wantedAircraft(work.aircraft, files),
  }));
  const base = { kind: "add", file: work.file, sha256, check: null } as const;
  const [first] = known;
  if (first !== undefined && known.length >= first.log.flights) {
    const outcome = await book.change(() => planKeepLog(bytes, known));
    return { ...base, aircraft: first.aircraft, outcome };
  }
  if (chosen.state === "stopped") {
    return { ...base, aircraft: null, outcome: { state: "stopped", notices: chosen.notices } };
  }
  const { request, outcome } = await addChecked(work, bytes, sha256, chosen.aircraft, book);
  return { ...base, aircraft: chosen.aircraft.name, outcome, check: request.checked.check };
}

async function addChecked(
  { file, given, answers, chargedWith, isAgain, run }: AddWork,
  bytes: Uint8Array,
  sha256: string,
  aircraft: BookAircraft,
  book: Book,
): Promise<{ readonly request: AddRequest; readonly outcome: Added }> {
  const options = readingOptionsOf(answers ?? NO_ANSWERS);
  const { name, budget, readings } = aircraft;
  const facts = judgedFacts(aircraft.facts, given, options.cells);
  const own = { file, sha256, aircraft: name, facts, budget, readings };
  const checked = checkLog(bytes, { ...own, options, day: dayOf(given) });
  const reading = keptReading(options);
  const request: AddRequest = { bytes, file, checked, aircraft, given, reading, chargedWith, isAgain };
  const frame = frameOf(book, run);
  return { request, outcome: await book.change((files) => planAdd(files, frame, request)) };
}
