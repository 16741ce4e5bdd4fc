import type { Budget } from "../../aircraft/budget.ts";
import type { Facts } from "../../aircraft/facts.ts";
import { parseAircraftFile, type RememberedReading, withRememberedReading } from "../../aircraft/index.ts";
import type { Notice } from "../../base/notices/index.ts";
import { nearestWord } from "../../base/words/index.ts";
import { AIRCRAFT_FOLDER } from "./bookFormat.ts";
import type { DamagedFile } from "./bookIndex.ts";
import { firstFree, harmlessName } from "./names.ts";
import { bookSentences } from "./sentences.ts";
import type { BookFiles } from "./store.ts";

/** An aircraft of the book, read. */
export interface BookAircraft {
  readonly name: string;
  /** Its file in the book. */
  readonly path: string;
  readonly text: string;
  readonly facts: Facts;
  readonly budget: Budget;
  readonly readings: readonly RememberedReading[];
}

export interface AircraftOfBook {
  readonly aircraft: readonly BookAircraft[];
  readonly damaged: readonly DamagedFile[];
}

/** Reads every aircraft file of the book. */
export function aircraftOfBook(files: BookFiles): AircraftOfBook {
  const aircraft: BookAircraft[] = [];
  const damaged: DamagedFile[] = [];
  for (const path of files.keys()) {
    if (!path.startsWith(AIRCRAFT_FOLDER)) continue;
    const text = files.get(path) ?? "";
    const parsed = parseAircraftFile(text, path);
    if (parsed.state === "refusal") damaged.push({ path, why: parsed.notices[0]?.text ?? "" });
    else aircraft.push({ ...parsed, name: parsed.facts.name ?? "", path, text });
  }
  return { aircraft, damaged };
}

/** An aircraft, or the question or refusal that stands in its place. */
export type ChosenAircraft =
  | { readonly state: "chosen"; readonly aircraft: BookAircraft }
  | { readonly state: "stopped"; readonly notices: readonly Notice[] };

/** The aircraft of that name; without a name the only one of the book. */
export function chooseAircraft({ aircraft, damaged }: AircraftOfBook, name: string | null): ChosenAircraft {
  const names = aircraft.map((one) => one.name);
  const found =
    name === null
      ? aircraft.length === 1 && damaged.length === 0
        ? aircraft[0]
        : undefined
      : aircraft.find((one) => isNamed(one, name));
  if (found !== undefined) return { state: "chosen", aircraft: found };
  const broken = damaged.map(
    ({ why }): Notice => ({ code: "aircraft-damaged", severity: "refusal", text: why }),
  );
  if (name !== null) return stopped([...broken, unknownAircraft(name, names)]);
  if (aircraft.length === 0) return stopped([...broken, noAircraft()]);
  return stopped([...broken, ...(aircraft.length > 1 ? [whichAircraft(names)] : [])]);
}

type OutsideAircraft = Omit<BookAircraft, "path" | "name">;

/**
 * An aircraft file from outside the book: as the book will keep it, with the readings the book remembers. One that
 * says the same of the aircraft as the book's own is the book's own.
 */
export function bringIn(book: AircraftOfBook, outside: OutsideAircraft): BookAircraft {
  const kept = keptOf(book, outside);
  return kept !== undefined && isSameFitting(kept, outside) ? kept : takenOver(book, outside);
}

/** The same, but its text goes in place of the book's own even where only its words differ. */
export function takenOver(book: AircraftOfBook, outside: OutsideAircraft): BookAircraft {
  const name = outside.facts.name ?? "";
  const kept = keptOf(book, outside);
  if (kept === undefined) {
    const taken = new Set(book.aircraft.map(({ path }) => path.toLowerCase()));
    const path = firstFree((number) => pathOf(name, number), taken);
    return { ...outside, name, path };
  }
  const known = new Set(outside.readings.map(({ headerSignature }) => headerSignature));
  const carried = kept.readings.filter(({ headerSignature }) => !known.has(headerSignature));
  const text = carried.reduce(withRememberedReading, outside.text);
  return { ...outside, name, path: kept.path, text, readings: [...outside.readings, ...carried] };
}

function keptOf({ aircraft }: AircraftOfBook, { facts }: OutsideAircraft): BookAircraft | undefined {
  return aircraft.find((one) => isNamed(one, facts.name ?? ""));
}

function isSameFitting(
  one: Pick<BookAircraft, "facts" | "budget">,
  other: Pick<BookAircraft, "facts" | "budget">,
): boolean {
  return JSON.stringify([one.facts, one.budget]) === JSON.stringify([other.facts, other.budget]);
}

function isNamed({ name, path }: BookAircraft, wanted: string): boolean {
  const stem = path.slice(AIRCRAFT_FOLDER.length, -".json".length);
  return [name, stem].some((known) => known.toLowerCase() === wanted.toLowerCase());
}

function pathOf(name: string, number: number): string {
  return `${AIRCRAFT_FOLDER}${harmlessName(name)}${number === 1 ? "" : `-${number}`}.json`;
}

function stopped(notices: readonly Notice[]): ChosenAircraft {
  return { state: "stopped", notices };
}

function whichAircraft(names: readonly string[]): Notice {
  return {
    code: "which-aircraft",
    severity: "question",
    text: bookSentences.whichAircraft(names),
    options: names.map((name) => `--aircraft ${name}`),
  };
}

function noAircraft(): Notice {
  return {
    code: "no-aircraft",
    severity: "question",
    text: bookSentences.noAircraft(),
    options: ["--aircraft FILE"],
  };
}

function unknownAircraft(name: string, names: readonly string[]): Notice {
  const text = bookSentences.aircraftUnknown(name, nearestWord(name, names), names);
  return { code: "aircraft-unknown", severity: "refusal", text };
}
