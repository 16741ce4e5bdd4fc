import type { Facts } from "../../aircraft/facts.ts";
import {
  type BriefFlight,
  type GivenFacts,
  type LogbookEntry,
  NOTHING_GIVEN,
  type PlacedFlight,
} from "./entry.ts";
import { oftenOf, SELDOM } from "./oftenMeasures.ts";
import { packMeasures, type SeldomMeasures, withSeldom } from "./packedMeasures.ts";

/** Facts by a key, once for all flights that share them. */
export type SharedFacts = Readonly<Record<string, Facts>>;

/** What a timer needs of a flight, with the key of its facts and only what was given. */
export type BriefRow = Omit<BriefFlight, "facts" | "given"> & {
  readonly facts: string;
  /** 0: nothing. */
  readonly given: Partial<GivenFacts> | 0;
};

/**
 * What else a list needs, and all that a place needs: flight, aircraft, pack, sequence, startsAt, release, startedAt,
 * startS, endS, log, headline, fingerprint.
 */
export type MoreRow = readonly [
  string,
  string,
  string | null,
  number,
  string | null,
  string,
  string | null,
  number,
  number,
  LogbookEntry["log"],
  string,
  readonly number[] | null,
];

/** A flight of the index as JSON texts, ASCII only. */
export interface RowTexts {
  readonly brief: string;
  readonly more: string;
  /** The measures that are seldom asked for. */
  readonly seldom: string;
}

export function rowTexts(entry: LogbookEntry, facts: string): RowTexts {
  const { flight, sequence, aircraft, log, startsAt, fingerprint, release, load } = entry;
  const { kind, startedAt, startS, endS, complete, headline, measures, isChargeDoubtful } = entry.check;
  const given = whatIsGiven(entry.given);
  const check = {
    kind,
    complete,
    measures: oftenOf(measures),
    ...(isChargeDoubtful && { isChargeDoubtful }),
  };
  const brief: BriefRow = { flight, aircraft, given, facts, check, load };
  const { pack } = entry.given;
  const more: MoreRow = [
    flight,
    aircraft,
    pack,
    sequence,
    startsAt,
    release,
    startedAt,
    startS,
    endS,
    log,
    headline,
    fingerprint,
  ];
  return {
    brief: asciiJson(brief),
    more: asciiJson(more),
    seldom: asciiJson(packMeasures(measures, SELDOM)),
  };
}

function whatIsGiven(given: GivenFacts): Partial<GivenFacts> | 0 {
  const said = Object.entries(given).filter(([, value]) =>
    Array.isArray(value) ? value.length > 0 : value !== null,
  );
  return said.length === 0 ? 0 : Object.fromEntries(said);
}

/** The row itself, filled up: one reading of JSON makes them all, and a copy of each would cost as much again. */
export function briefFlight(row: BriefRow, facts: SharedFacts): BriefFlight {
  const own = facts[row.facts];
  if (own === undefined) throw new Error(`the index lacks the facts ${row.facts} of flight ${row.flight}`);
  const given = row.given === 0 ? NOTHING_GIVEN : { ...NOTHING_GIVEN, ...row.given };
  return Object.assign(row, { facts: own, given }) as unknown as BriefFlight;
}

export function indexedEntry(brief: BriefFlight, row: MoreRow, seldom: SeldomMeasures): LogbookEntry {
  const [, , , sequence, startsAt, release, startedAt, startS, endS, log, headline, fingerprint] = row;
  const { flight, aircraft, given, facts, load } = brief;
  const { measures: often, ...briefly } = brief.check;
  const measures = withSeldom(often, seldom);
  return {
    format: "tallywatt/flight",
    version: 1,
    flight,
    sequence,
    aircraft,
    log,
    startsAt,
    given,
    facts,
    release,
    check: { ...briefly, startedAt, startS, endS, headline, measures },
    load,
    fingerprint,
  };
}

export function placedFlight(row: MoreRow): PlacedFlight {
  const [flight, aircraft, pack, sequence, startsAt, , startedAt, startS, endS, log, , fingerprint] = row;
  const check = { startedAt, startS, endS };
  return { flight, sequence, aircraft, log, startsAt, fingerprint, given: { pack }, check };
}

/** Inside JSON this is the same text; a reader of plain ASCII is quicker. */
export function asciiJson(value: unknown): string {
  return JSON.stringify(value).replace(
    /[\u007F-\uFFFF]/g,
    (one) => `\\u${one.charCodeAt(0).toString(16).padStart(4, "0")}`,
  );
}
