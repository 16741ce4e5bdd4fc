import type { Facts } from "../../aircraft/facts.ts";
import type { FlightFigures, LogbookEntry } from "./entry.ts";
import type { Digest } from "./entryText.ts";
import { PACKING_ORDER, type PackingOrder, packMeasures, unpackMeasures } from "./packedMeasures.ts";

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

/** First line of the index: facts are kept once for all flights that share them. */
interface Head {
  readonly damaged: readonly DamagedFile[];
  readonly order: PackingOrder;
  readonly facts: Readonly<Record<string, Facts>>;
}

/** A flight's line but its measures. */
type Row = Omit<LogbookEntry, "format" | "version" | "facts" | "check"> & {
  readonly facts: string;
  readonly check: Omit<FlightFigures, "measures">;
};

const KEY_LENGTH = 16;
/** The line that an entry was read from: an entry that did not change is not written out again. */
const lines = new WeakMap<LogbookEntry, string>();

/**
 * The index as text, ASCII only: a line with the shared facts, then a line a flight of three JSON parts
 * between tabs (what a list needs, the measures often asked for, the rest).
 */
export function indexText({ entries, damaged }: BookIndex, digest: Digest): string {
  const keys = new Map<Facts, string>();
  const facts: Record<string, Facts> = {};
  for (const { facts: own } of entries) {
    if (keys.has(own)) continue;
    const key = digest(JSON.stringify(own)).slice(0, KEY_LENGTH);
    keys.set(own, key);
    facts[key] = own;
  }
  const head: Head = { damaged, order: PACKING_ORDER, facts };
  const rows = entries.map((entry) => lines.get(entry) ?? lineOf(entry, keys.get(entry.facts) ?? ""));
  return [ascii(JSON.stringify(head)), ...rows, ""].join("\n");
}

/** Reads what `indexText` wrote. Throws on anything else: the store hands out only an index that fits. */
export function readIndex(text: string): BookIndex {
  const [first = "", ...rows] = text.split("\n");
  const head = JSON.parse(first) as Head;
  const isKept = isSameOrder(head.order);
  const entries = rows.filter((row) => row !== "").map((row) => entryOf(row, head, isKept));
  return { entries, damaged: head.damaged };
}

function lineOf(entry: LogbookEntry, facts: string): string {
  const { flight, sequence, aircraft, log, startsAt, fingerprint, given, release, load } = entry;
  const { kind, startedAt, startS, endS, complete, headline, measures } = entry.check;
  const check = { kind, startedAt, startS, endS, complete, headline };
  const row: Row = {
    flight,
    sequence,
    aircraft,
    log,
    startsAt,
    given,
    facts,
    release,
    check,
    load,
    fingerprint,
  };
  return ascii([JSON.stringify(row), ...packMeasures(measures)].join("\t"));
}

function entryOf(line: string, { facts, order }: Head, isKept: boolean): LogbookEntry {
  const [first = "", often = "", rest = ""] = line.split("\t");
  const row = JSON.parse(first) as Row;
  const own = facts[row.facts];
  if (own === undefined) throw new Error(`the index names facts ${row.facts}, which it does not hold`);
  const check: FlightFigures = { ...row.check, measures: unpackMeasures(often, rest, order) };
  const entry: LogbookEntry = { ...row, format: "tallywatt/flight", version: 1, facts: own, check };
  if (isKept) lines.set(entry, line);
  return entry;
}

/** A line of another release's order cannot be kept: the index has one order for all. */
function isSameOrder(order: PackingOrder): boolean {
  return JSON.stringify(order) === JSON.stringify(PACKING_ORDER);
}

/** Inside JSON this is the same text; a reader of plain ASCII is quicker. */
function ascii(json: string): string {
  return json.replace(/[\u007F-\uFFFF]/g, (one) => `\\u${one.charCodeAt(0).toString(16).padStart(4, "0")}`);
}
