import { type AircraftOfBook, aircraftOfBook } from "./bookAircraft.ts";
import { checkAgain } from "./checkAgain.ts";
import { type GivenFacts, type KeptFlight, NOTHING_GIVEN } from "./entry.ts";
import { flightsOfAircraft } from "./listResult.ts";
import { type NamedFlight, namedFlights } from "./namedFlights.ts";
import type { OpenedBook } from "./openedBook.ts";
import { planReplaceAll, type Replacement } from "./planReplace.ts";
import { readBriefFlights } from "./readBook.ts";
import { bookSentences } from "./sentences.ts";
import { unknownPack } from "./unknownPack.ts";

/** Facts to change; null takes one away, one left out stays. */
export type GivenChanges = Partial<Omit<GivenFacts, "putBackFlights">>;

/** Flights that were changed; or why none was: one is not there, damaged, or was changed by another program meanwhile. */
export type EditedFlights =
  | { readonly state: "edited"; readonly flights: readonly string[]; readonly packNote: string | null }
  | { readonly state: "unusable" | "changedMeanwhile"; readonly why: string };

/** Facts that the measures depend on: with them the log is analysed again. */
const MEASURED_WITH: readonly (keyof GivenFacts)[] = ["propeller", "ambientC", "startPct", "date"];

/**
 * Changes what the pilot said of flights, of all or of none. With several, a put-back is what one charge put back after all of them:
 * it is kept with the last and names them all.
 */
export async function editFlights(
  book: OpenedBook,
  flights: readonly string[],
  changes: GivenChanges,
): Promise<EditedFlights> {
  const { named, aircraft, brief } = await book.read((files) => ({
    named: namedFlights(flights, files, book.frame.digest),
    aircraft: aircraftOfBook(files),
    brief: changes.pack ? readBriefFlights(files, book.frame.digest).entries : [],
  }));
  if (named.state === "unusable") return named;
  const names = named.flights.map(({ entry }) => entry.flight);
  if (typeof changes.flownS === "number" && names.length > 1)
    return { state: "unusable", why: bookSentences.oneTimeEach(names.length) };
  const replacements: Replacement[] = [];
  for (const [at, one] of named.flights.entries()) {
    const given = editedGiven(one.entry.given, changes, names, at === names.length - 1);
    const entry = await edited(book, one, given, aircraft);
    if (typeof entry === "string") return { state: "unusable", why: entry };
    replacements.push({ entry, madeFrom: one.text });
  }
  const made = await book.change((files) =>
    planReplaceAll(files, book.frame, bookSentences.edited(names), replacements),
  );
  const [lost] = made.changedMeanwhile;
  if (lost !== undefined) return { state: "changedMeanwhile", why: bookSentences.changedMeanwhile(lost) };
  const ofAircraft = flightsOfAircraft(brief, named.flights[0]?.entry.aircraft ?? null);
  return { state: "edited", flights: made.flights, packNote: unknownPack(changes.pack ?? null, ofAircraft) };
}

function editedGiven(
  given: GivenFacts,
  changes: GivenChanges,
  names: readonly string[],
  isLast: boolean,
): GivenFacts {
  const changed = { ...NOTHING_GIVEN, ...given, ...changes };
  if (changes.putBackMah === undefined) return changed;
  if (changes.putBackMah === null || !isLast) return { ...changed, putBackMah: null, putBackFlights: [] };
  // A put-back corrected through the one flight that carries it is still the charge of its whole group.
  const isCarried = names.length === 1 && given.putBackFlights.includes(names[0] ?? "");
  return { ...changed, putBackFlights: isCarried ? given.putBackFlights : names };
}

/** The flight as it shall be, or why its log cannot be analysed again. */
async function edited(
  book: OpenedBook,
  { entry }: NamedFlight,
  given: GivenFacts,
  { aircraft }: AircraftOfBook,
): Promise<KeptFlight | string> {
  const isSame = MEASURED_WITH.every((key) => given[key] === entry.given[key]);
  if (isSame) return { ...entry, given };
  const fitted = aircraft.find(({ name }) => name === entry.aircraft);
  // The entry's facts name the propeller that flew; another one starts from the one that is fitted.
  const isRefitted = given.propeller !== entry.given.propeller && fitted !== undefined;
  const facts = isRefitted ? { ...entry.facts, propeller: fitted.facts.propeller } : entry.facts;
  const judgedBy = { given, facts, budget: entry.budget, readings: fitted?.readings ?? [] };
  const again = await checkAgain(book, entry, judgedBy);
  return again.state === "stays" ? again.why : again.entry;
}
