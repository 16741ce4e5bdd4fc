import {
  type AircraftOfBook,
  aircraftOfBook,
  bookSentences,
  type GivenFacts,
  NOTHING_GIVEN,
  planReplace,
  type Replacement,
} from "../../season/logbook/index.ts";
import type { Call, CommandDefinition } from "./commandDefinition.ts";
import { EXIT, type ExitCode } from "./exitCodes.ts";
import { Failure, usageFailure } from "./failure.ts";
import type { Io } from "./io.ts";
import { changeJson } from "./logbook/changeJson.ts";
import { checkAgain } from "./logbook/checkAgain.ts";
import { flightsOfCall, type NamedFlight } from "./logbook/flightsOfCall.ts";
import { GIVEN_OPTIONS, givenFacts } from "./logbook/givenOptions.ts";
import { BOOK_OPTION, DRY_RUN_OPTION, JSON_OPTION, type OpenBook, openBook } from "./logbook/openBook.ts";
import { logbookSentences } from "./logbook/sentences.ts";
import type { Talk } from "./talk.ts";

/** Option names and the facts they clear. */
const CLEARABLE: Readonly<Record<string, keyof GivenFacts>> = {
  pack: "pack",
  propeller: "propeller",
  ambient: "ambientC",
  "start-pct": "startPct",
  "put-back": "putBackMah",
  flown: "flownS",
  date: "date",
  note: "note",
};
/** Facts that the measures depend on: with them the log is analysed again. */
const MEASURED_WITH: readonly (keyof GivenFacts)[] = ["propeller", "ambientC", "startPct", "date"];

export const command: CommandDefinition = {
  operands: "<FLIGHT...>",
  about: "change what the pilot said of a flight; the log stays",
  examples: [
    { line: "tallywatt edit 2026-06-14-1 --pack B --put-back 2450", about: "pack and charger's reading" },
    { line: "tallywatt edit 2026-06-14-1 --clear note", about: "takes a fact away" },
  ],
  options: [
    BOOK_OPTION,
    ...GIVEN_OPTIONS,
    { flags: "--clear <FACT>", help: "take a fact away; repeatable" },
    DRY_RUN_OPTION,
    JSON_OPTION,
  ],
  notes: [
    `FACT is ${Object.keys(CLEARABLE).join(", ")}.`,
    "With several flights --put-back is what one charge put back after all of them.",
  ],
  run,
};

async function run(call: Call, io: Io, talk: Talk): Promise<ExitCode> {
  const book = openBook(call, io, talk);
  const changes = changesOf(call);
  const { named, aircraft } = await book.read((files) => ({
    named: flightsOfCall(call.operands, files, book.frame.digest),
    aircraft: aircraftOfBook(files),
  }));
  const names = named.map(({ entry }) => entry.flight);
  const replacements: Replacement[] = [];
  for (const [at, one] of named.entries()) {
    const given = editedGiven(one.entry.given, changes, names, at === named.length - 1);
    replacements.push({ entry: await edited(book, one, given, aircraft), madeFrom: one.text });
  }
  const { flights, changedMeanwhile } = await book.change((files) =>
    planReplace(files, book.frame, bookSentences.edited(names), replacements),
  );
  const lost = changedMeanwhile[0];
  if (lost !== undefined) throw new Failure(EXIT.cannotWrite, bookSentences.changedMeanwhile(lost));
  if (call.has("json")) talk.data(changeJson("edit", flights, book.isDry));
  else talk.data(logbookSentences.edited(flights, book.isDry));
  return EXIT.done;
}

/** Only what the call gives or clears. */
function changesOf(call: Call): Partial<GivenFacts> {
  const given = Object.entries(givenFacts(call)).filter(
    ([key, value]) => value !== null && key !== "putBackFlights",
  );
  const cleared = call.texts("clear").map((name) => {
    const key = Object.hasOwn(CLEARABLE, name) ? CLEARABLE[name] : undefined;
    if (key === undefined) throw usageFailure(logbookSentences.clearWrong(name, Object.keys(CLEARABLE)));
    return [key, null] as const;
  });
  if (given.length + cleared.length === 0) {
    throw usageFailure(logbookSentences.nothingToEdit("tallywatt edit --help"));
  }
  return Object.fromEntries([...given, ...cleared]) as Partial<GivenFacts>;
}

/** One charge after several flights is kept with the last of them and names them all. */
function editedGiven(
  given: GivenFacts,
  changes: Partial<GivenFacts>,
  names: readonly string[],
  isLast: boolean,
): GivenFacts {
  const changed = { ...NOTHING_GIVEN, ...given, ...changes };
  if (changes.putBackMah === undefined) return changed;
  if (changes.putBackMah === null || !isLast) return { ...changed, putBackMah: null, putBackFlights: [] };
  return { ...changed, putBackFlights: names };
}

async function edited(
  book: OpenBook,
  { entry }: NamedFlight,
  given: GivenFacts,
  { aircraft }: AircraftOfBook,
): Promise<Replacement["entry"]> {
  const isSame = MEASURED_WITH.every((key) => given[key] === entry.given[key]);
  if (isSame) return { ...entry, given };
  const fitted = aircraft.find(({ name }) => name === entry.aircraft);
  // The entry's facts name the propeller that flew; another one starts from the one that is fitted.
  const isRefitted = given.propeller !== entry.given.propeller && fitted !== undefined;
  const facts = isRefitted ? { ...entry.facts, propeller: fitted.facts.propeller } : entry.facts;
  const again = await checkAgain(book, entry, {
    given,
    facts,
    budget: entry.budget,
    readings: fitted?.readings ?? [],
  });
  if (again.state === "stays") throw new Failure(EXIT.unusable, again.why);
  return again.entry;
}
