import type { Facts } from "../../aircraft/facts.ts";
import type { MeasureName } from "../../flight/analysis/measures.ts";
import type { BriefFlight, LogbookEntry, PlacedFlight } from "./entry.ts";
import type { Digest } from "./entryText.ts";
import {
  asciiJson,
  type BriefRow,
  briefFlight,
  indexedEntry,
  type MoreRow,
  placedFlight,
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

/** Flights by their places alone, as an index is written from them too. */
export interface PlacedIndex {
  /** In the order of flying; those that came from no index are whole. */
  readonly entries: readonly (LogbookEntry | PlacedFlight)[];
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
const FORMAT = 4;
const START = `{"index":${FORMAT},`;
const KEY_LENGTH = 16;
/** Between rows, which are read together as one JSON list: no JSON text of a row holds a line end. */
const NEXT = ",\n";

/** A text that was read: its brief rows, those with more, and those of the seldom measures. */
interface ReadText {
  readonly head: Head;
  readonly blocks: Blocks;
  /** Where each row starts in its block; null until somebody asks. */
  starts: Readonly<Record<Block, readonly number[]>> | null;
}

type Block = keyof RowTexts;
type Blocks = Readonly<Record<Block, string>>;

/** Where an entry was read from: its row is not made anew. */
interface Origin {
  readonly from: ReadText;
  readonly at: number;
}

const origins = new WeakMap<LogbookEntry | PlacedFlight, Origin>();
/** Reading the same text again, as every change does after a look, gives the same flights. */
let latest: { readonly text: string; readonly index: BookIndex } | null = null;
let latestPlaces: { readonly text: string; readonly index: PlacedIndex } | null = null;

/**
 * The index as text, ASCII only: a line of what all rows share, then the flights three times: a brief row of each, a
 * row with more, and a row of the measures that are seldom asked for.
 */
export function indexText({ entries, damaged }: PlacedIndex, digest: Digest): string {
  const { keys, facts } = sharedFacts(entries, digest);
  const pieces = piecesOf(entries, keys);
  const [brief, more, seldom] = BLOCKS.map((block) =>
    pieces.map((piece) => pieceText(piece, block)).join(NEXT),
  );
  const lengths = [brief!.length, more!.length] as const;
  const head: Head = { index: FORMAT, damaged, often: OFTEN, seldom: SELDOM, facts, lengths };
  return [asciiJson(head), brief, more, seldom, ""].join("\n");
}

const BLOCKS = ["brief", "more", "seldom"] as const satisfies readonly Block[];

/** Neighbouring rows that were read together, or a row that is made anew. */
type Piece = { readonly from: ReadText; readonly first: number; end: number } | { readonly texts: RowTexts };

function piecesOf(entries: PlacedIndex["entries"], keys: ReadonlyMap<Facts, string>): readonly Piece[] {
  const pieces: Piece[] = [];
  for (const entry of entries) {
    const origin = keptOrigin(entry);
    const run = pieces.at(-1);
    if (origin === null) pieces.push({ texts: newRow(entry, keys) });
    else if (run !== undefined && "from" in run && run.from === origin.from && run.end === origin.at)
      run.end += 1;
    else pieces.push({ from: origin.from, first: origin.at, end: origin.at + 1 });
  }
  return pieces;
}

function pieceText(piece: Piece, block: Block): string {
  if ("texts" in piece) return piece.texts[block];
  const starts = startsIn(piece.from)[block];
  const end = piece.end < starts.length ? starts[piece.end]! - NEXT.length : undefined;
  return piece.from.blocks[block].slice(starts[piece.first], end);
}

function newRow(entry: LogbookEntry | PlacedFlight, keys: ReadonlyMap<Facts, string>): RowTexts {
  if (!("facts" in entry)) throw new Error(`only the place of ${entry.flight} is known`);
  return rowTexts(entry, keys.get(entry.facts) ?? "");
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
  const { head, blocks } = read;
  const brief = briefFlights(blocks.brief, head);
  const entries = moreRows(read).map((row, at) => {
    const seldom = { text: () => rowIn(read, "seldom", at), names: head.seldom };
    return noted(indexedEntry(brief[at]!, row, seldom), { from: read, at });
  });
  const index = { entries, damaged: head.damaged };
  latest = { text, index };
  return index;
}

/** The places of its flights; null where another release has other measures: such rows cannot be kept. */
export function readPlacesIn(text: string): PlacedIndex | null {
  if (latestPlaces?.text === text) return latestPlaces.index;
  const read = cutUp(text);
  if (!isOfOurMeasures(read.head)) return null;
  const entries = moreRows(read).map((row, at) => noted(placedFlight(row), { from: read, at }));
  const index = { entries, damaged: read.head.damaged };
  latestPlaces = { text, index };
  return index;
}

function moreRows({ blocks }: ReadText): readonly MoreRow[] {
  return JSON.parse(`[${blocks.more}]`) as readonly MoreRow[];
}

function noted<Entry extends LogbookEntry | PlacedFlight>(entry: Entry, origin: Origin): Entry {
  origins.set(entry, origin);
  return entry;
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
  const brief = text.slice(briefAt, moreAt - 1);
  const more = text.slice(moreAt, seldomAt - 1);
  return { head, blocks: { brief, more, seldom: text.slice(seldomAt, -1) }, starts: null };
}

/** The row of an entry can be kept; rows of another release's measures cannot: the index has one order. */
function keptOrigin(entry: LogbookEntry | PlacedFlight): Origin | null {
  const origin = origins.get(entry);
  return origin !== undefined && isOfOurMeasures(origin.from.head) ? origin : null;
}

function isOfOurMeasures({ often, seldom }: Head): boolean {
  return often.join() === OFTEN.join() && seldom.join() === SELDOM.join();
}

function rowIn(read: ReadText, block: Block, at: number): string {
  return pieceText({ from: read, first: at, end: at + 1 }, block);
}

function startsIn(read: ReadText): Readonly<Record<Block, readonly number[]>> {
  const { brief, more, seldom } = read.blocks;
  read.starts ??= { brief: rowStarts(brief), more: rowStarts(more), seldom: rowStarts(seldom) };
  return read.starts;
}

function rowStarts(block: string): readonly number[] {
  const starts: number[] = block === "" ? [] : [0];
  for (let at = block.indexOf(NEXT); at >= 0; at = block.indexOf(NEXT, at + 1)) starts.push(at + NEXT.length);
  return starts;
}

/** Facts of all flights by their keys: a place names those that its index held. */
function sharedFacts(
  entries: PlacedIndex["entries"],
  digest: Digest,
): { readonly keys: ReadonlyMap<Facts, string>; readonly facts: SharedFacts } {
  const keys = new Map<Facts, string>();
  const facts: Record<string, Facts> = {};
  const texts = new Set<ReadText>();
  for (const entry of entries) {
    if (!("facts" in entry)) {
      const from = origins.get(entry)?.from;
      if (from !== undefined) texts.add(from);
    } else if (!keys.has(entry.facts)) {
      const key = digest(JSON.stringify(entry.facts)).slice(0, KEY_LENGTH);
      keys.set(entry.facts, key);
      facts[key] = entry.facts;
    }
  }
  return {
    keys,
    facts: Object.assign({}, ...[...texts].map(({ head }) => head.facts), facts) as SharedFacts,
  };
}
