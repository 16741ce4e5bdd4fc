import type { Facts } from "../../aircraft/facts.ts";
import { MEASURE_NAMES, type MeasureName } from "../../flight/analysis/index.ts";
import type { FlightFigures, LogbookEntry } from "./entry.ts";
import { withEveryMeasure } from "./entryText.ts";
import { packMeasures, unpackMeasures } from "./packedMeasures.ts";

/** A file of a flight that cannot be used. */
export interface DamagedFile {
  readonly path: string;
  readonly why: string;
}

/** Every flight of a book without what only its own file needs. */
export interface BookIndex {
  /** In the order of flying. */
  readonly entries: readonly LogbookEntry[];
  readonly damaged: readonly DamagedFile[];
}

/** One flight of the index: facts are kept once for all flights that share them. */
type Row = Omit<LogbookEntry, "format" | "version" | "facts" | "check"> & {
  readonly facts: number;
  readonly check: Omit<FlightFigures, "measures">;
  readonly measures: Parameters<typeof unpackMeasures>[0];
};

interface Body {
  readonly measures: readonly MeasureName[];
  readonly damaged: readonly DamagedFile[];
  readonly facts: readonly Facts[];
  readonly flights: readonly Row[];
}

/** The index as text: JSON, a line a flight. */
export function indexText({ entries, damaged }: BookIndex): string {
  const facts = new Map<string, number>();
  const rows = entries.map((entry) => JSON.stringify(rowOf(entry, numberOf(facts, entry.facts))));
  return [
    `{"measures":${JSON.stringify(MEASURE_NAMES)},"damaged":${JSON.stringify(damaged)},"facts":[`,
    [...facts.keys()].join(",\n"),
    '],"flights":[',
    rows.join(",\n"),
    "]}",
  ].join("\n");
}

/** Reads what `indexText` wrote. Throws on anything else: the store hands out only an index that fits. */
export function readIndex(text: string): BookIndex {
  const { measures, damaged, facts, flights } = JSON.parse(text) as Body;
  return { entries: flights.map((row) => entryOf(row, facts, measures)), damaged };
}

function numberOf(facts: Map<string, number>, one: Facts): number {
  const text = JSON.stringify(one);
  const known = facts.get(text);
  if (known !== undefined) return known;
  facts.set(text, facts.size);
  return facts.size - 1;
}

function rowOf(entry: LogbookEntry, facts: number): Row {
  const { flight, sequence, aircraft, log, startsAt, fingerprint, given, release, load } = entry;
  const { kind, startedAt, startS, endS, complete, headline, measures } = entry.check;
  return {
    flight,
    sequence,
    aircraft,
    log,
    startsAt,
    fingerprint,
    given,
    facts,
    release,
    load,
    check: { kind, startedAt, startS, endS, complete, headline },
    measures: packMeasures(measures, MEASURE_NAMES),
  };
}

function entryOf(
  { measures, check, facts, ...row }: Row,
  allFacts: readonly Facts[],
  names: readonly MeasureName[],
): LogbookEntry {
  const own = allFacts[facts];
  if (own === undefined) throw new Error(`the index names facts ${facts}, which it does not hold`);
  return {
    ...row,
    format: "tallywatt/flight",
    version: 1,
    facts: own,
    check: { ...check, measures: withEveryMeasure(unpackMeasures(measures, names)) },
  };
}
