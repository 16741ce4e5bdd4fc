import type { Facts } from "../../aircraft/facts.ts";
import type { MeasureName } from "../../flight/analysis/measures.ts";
import type { BriefFlight, LogbookEntry } from "./entry.ts";
import type { Digest } from "./entryText.ts";
import {
  asciiJson,
  type BriefRow,
  briefFlight,
  indexedEntry,
  type MoreRow,
  type RowTexts,
  rowTexts,
  type SharedFacts,
} from "./indexRows.ts";
import { OFTEN, SELDOM } from "./oftenMeasures.ts";

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

/** The same with only what a timer needs of each flight: the front of the text. */
export interface BriefIndex {
  readonly entries: readonly BriefFlight[];
  readonly damaged: readonly DamagedFile[];
}

/** First line of the index. */
interface Head {
  readonly index: typeof FORMAT;
  readonly damaged: readonly DamagedFile[];
  /** Measures that a brief row holds, and the order of the others: another release has others. */
  readonly often: readonly MeasureName[];
  readonly seldom: readonly MeasureName[];
  readonly facts: SharedFacts;
  /** Characters of the brief rows and of the rows with more. */
  readonly lengths: readonly [number, number];
}

/** Counted up with every change of what follows: an index of another kind is made again. */
const FORMAT = 3;
const START = `{"index":${FORMAT},`;
const KEY_LENGTH = 16;
/** Between rows that are read together as one JSON list: no JSON text of a row holds a line end. */
const NEXT = ",\n";

/** A text that was read, cut up only as far as somebody asks. */
interface ReadText {
  readonly head: Head;
  readonly brief: string;
  readonly more: string;
  readonly seldom: string;
  rows: readonly RowTexts[] | null;
  seldomRows: readonly string[] | null;
}

/** The row that an entry was read from: an entry that did not change is not written out again. */
const origins = new WeakMap<LogbookEntry, { readonly from: ReadText; readonly at: number }>();
/** Reading the same text again, as every change does after a look, gives the same flights. */
let latest: { readonly text: string; readonly index: BookIndex } | null = null;

/**
 * The index as text, ASCII only: a line of what all rows share, then the flights three times: a brief row of each, a
 * row with more, and a row of the measures that are seldom asked for.
 */
export function indexText({ entries, damaged }: BookIndex, digest: Digest): string {
  const { keys, facts } = sharedFacts(entries, digest);
  const rows = entries.map((entry) => keptRow(entry) ?? rowTexts(entry, keys.get(entry.facts) ?? ""));
  const brief = rows.map((row) => row.brief).join(NEXT);
  const more = rows.map((row) => row.more).join(NEXT);
  const lengths = [brief.length, more.length] as const;
  const head: Head = { index: FORMAT, damaged, often: OFTEN, seldom: SELDOM, facts, lengths };
  return [asciiJson(head), brief, more, ...rows.map((row) => row.seldom), ""].join("\n");
}

/** False for a text that another release wrote in its own way. */
export function isReadableIndex(text: string): boolean {
  return text.startsWith(START);
}

/** Characters of the front of an index: the first line and the brief rows; all of one that is written another way. */
export function frontLength(index: string): number {
  if (!isReadableIndex(index)) return index.length;
  return index.indexOf("\n") + 1 + headOf(index).lengths[0] + 1;
}

/** Reads what `indexText` wrote. Throws on anything else: the store hands out only an index that fits. */
export function readIndex(text: string): BookIndex {
  if (latest?.text === text) return latest.index;
  const read = cutUp(text);
  const { head } = read;
  const brief = briefFlights(read.brief, head);
  const more = JSON.parse(`[${read.more}]`) as readonly MoreRow[];
  const entries = more.map((row, at) => {
    const seldom = { text: () => seldomRowsOf(read)[at] ?? "", names: head.seldom };
    const entry = indexedEntry(brief[at]!, row, seldom);
    origins.set(entry, { from: read, at });
    return entry;
  });
  const index = { entries, damaged: head.damaged };
  latest = { text, index };
  return index;
}

/** What the front of an index says; null where another release has other measures in front. */
export function readFront(text: string): BriefIndex | null {
  const head = headOf(text);
  if (!OFTEN.every((name) => head.often.includes(name))) return null;
  const start = text.indexOf("\n") + 1;
  const brief = text.slice(start, start + head.lengths[0]);
  return { entries: briefFlights(brief, head), damaged: head.damaged };
}

function briefFlights(brief: string, { facts }: Head): readonly BriefFlight[] {
  return (JSON.parse(`[${brief}]`) as readonly BriefRow[]).map((row) => briefFlight(row, facts));
}

function headOf(text: string): Head {
  return JSON.parse(text.slice(0, text.indexOf("\n"))) as Head;
}

function cutUp(text: string): ReadText {
  const head = headOf(text);
  const briefAt = text.indexOf("\n") + 1;
  const moreAt = briefAt + head.lengths[0] + 1;
  const seldomAt = moreAt + head.lengths[1] + 1;
  return {
    head,
    brief: text.slice(briefAt, moreAt - 1),
    more: text.slice(moreAt, seldomAt - 1),
    seldom: text.slice(seldomAt),
    rows: null,
    seldomRows: null,
  };
}

/** The row of an entry that was read; rows of another release's measures cannot be kept: the index has one order. */
function keptRow(entry: LogbookEntry): RowTexts | undefined {
  const origin = origins.get(entry);
  if (origin === undefined || !isOfOurMeasures(origin.from.head)) return undefined;
  return rowsOf(origin.from)[origin.at];
}

function isOfOurMeasures({ often, seldom }: Head): boolean {
  return often.join() === OFTEN.join() && seldom.join() === SELDOM.join();
}

function rowsOf(read: ReadText): readonly RowTexts[] {
  if (read.rows !== null) return read.rows;
  const more = read.more.split(NEXT);
  const seldom = seldomRowsOf(read);
  read.rows = read.brief
    .split(NEXT)
    .map((brief, at) => ({ brief, more: more[at] ?? "", seldom: seldom[at] ?? "" }));
  return read.rows;
}

function seldomRowsOf(read: ReadText): readonly string[] {
  read.seldomRows ??= read.seldom.split("\n");
  return read.seldomRows;
}

function sharedFacts(
  entries: readonly LogbookEntry[],
  digest: Digest,
): { readonly keys: ReadonlyMap<Facts, string>; readonly facts: Readonly<Record<string, Facts>> } {
  const keys = new Map<Facts, string>();
  const facts: Record<string, Facts> = {};
  for (const { facts: own } of entries) {
    if (keys.has(own)) continue;
    const key = digest(JSON.stringify(own)).slice(0, KEY_LENGTH);
    keys.set(own, key);
    facts[key] = own;
  }
  return { keys, facts };
}
