import type { Notice } from "../../base/notices/index.ts";
import { CleanRows } from "./cleanRows.ts";
import type { Decoding } from "./encoding.ts";
import { MOST_COLUMNS } from "./limits.ts";
import { BYTES_AT_ONCE, lineBlocks } from "./lines.ts";
import { type LineWindow, lineWindows } from "./lineWindows.ts";
import type { LogBytes } from "./logBytes.ts";
import * as say from "./sentences.ts";
import type { TableBuilder } from "./table.ts";

const LF = 0x0a;
/** Bytes handed over as lines of text before clean rows are tried again; doubled while none are found. */
const FIRST_STRETCH = 1 << 12;
/** Rows that tell how long a row of this file is. */
const TELLING_ROWS = 1000;

/** How far a window of the file has been read. */
interface Place {
  at: number;
  /** 1-based line of the file that starts there. */
  line: number;
}

/**
 * Hands a file to the builder: lines of plain numbers as numbers, all others as text. Returns why it is refused,
 * or null. `usesCleanRows` false hands over everything as text: the same table, slower.
 */
export function fillTable(
  builder: TableBuilder,
  bytes: LogBytes,
  decoding: Decoding,
  delimiter: string,
  usesCleanRows: boolean,
): Notice | null {
  const isWide = decoding.encoding === "utf-16le" || decoding.encoding === "utf-16be";
  const scanners = new Map<number, CleanRows | null>();
  let line = 1;
  for (const window of lineWindows(bytes, decoding, isWide)) {
    const place: Place = { at: 0, line };
    const filled = { builder, window, decoding, delimiter, isClean: usesCleanRows && !isWide, scanners };
    const refusal = fillFromWindow(filled, place);
    if (refusal !== null) return refusal;
    line = place.line;
  }
  return null;
}

interface Filling {
  readonly builder: TableBuilder;
  readonly window: LineWindow;
  readonly decoding: Decoding;
  readonly delimiter: string;
  readonly isClean: boolean;
  /** By width: one serves all windows. */
  readonly scanners: Map<number, CleanRows | null>;
}

function fillFromWindow(filling: Filling, place: Place): Notice | null {
  const { builder, window, isClean } = filling;
  const { bytes } = window;
  const lastLineEnd = isClean ? bytes.lastIndexOf(LF) + 1 : 0;
  let stretch = FIRST_STRETCH;
  while (place.at < bytes.length) {
    if (addCleanRun(filling, bytes.subarray(0, lastLineEnd), place)) stretch = FIRST_STRETCH;
    const next = bytes.indexOf(LF, place.at + stretch) + 1;
    const end = place.at < lastLineEnd && next > 0 ? next : bytes.length;
    const refusal = refusalOf(builder) ?? addText(filling, end, place);
    if (refusal !== null) return refusal;
    stretch = Math.min(2 * stretch, BYTES_AT_ONCE);
  }
  return null;
}

/** Adds rows of plain numbers for as long as they follow each other; true if there were any. */
function addCleanRun(filling: Filling, bytes: Uint8Array, place: Place): boolean {
  const { builder, window } = filling;
  if (place.at >= bytes.length || !builder.takesCleanRows(place.line)) return false;
  const { width, mark } = builder.form;
  const scanner = scannerFor(width, filling);
  const first = place.at;
  for (;;) {
    const rows = scanner?.scan(bytes, place.at, mark) ?? 0;
    if (scanner === null || rows === 0 || builder.tooLarge) return place.at > first;
    const rowBytes = (scanner.end - place.at) / rows;
    const leftBytes = bytes.length - place.at + window.bytesAfter;
    if (rows >= TELLING_ROWS) builder.reserve(Math.ceil(leftBytes / rowBytes));
    builder.addCleanRows(scanner, rows, place.line);
    place.at = scanner.end;
    place.line += rows;
  }
}

function scannerFor(width: number, { delimiter, scanners }: Filling): CleanRows | null {
  const scanner = scanners.get(width) ?? CleanRows.of(width, delimiter);
  scanners.set(width, scanner);
  return scanner;
}

function addText({ builder, window, decoding }: Filling, end: number, place: Place): Notice | null {
  const { bytes, bytesAfter } = window;
  const isEndOfFile = bytesAfter === 0 && end === bytes.length;
  const part = { ...decoding, start: place.at, end };
  for (const block of lineBlocks(bytes, part, BYTES_AT_ONCE, place.line)) {
    if (block.overlongLine !== null) {
      return { code: "line-too-long", severity: "refusal", text: say.lineTooLong(block.overlongLine) };
    }
    builder.addBlock({ ...block, isLast: block.isLast && isEndOfFile });
    place.line = block.firstLine + block.lines.length;
    const refusal = refusalOf(builder);
    if (refusal !== null) return refusal;
  }
  place.at = end;
  return null;
}

function refusalOf(builder: TableBuilder): Notice | null {
  if (builder.tooLarge) return { code: "too-many-rows", severity: "refusal", text: say.tooManyRows() };
  if (builder.columnCount <= MOST_COLUMNS) return null;
  return { code: "too-many-columns", severity: "refusal", text: say.tooManyColumns(builder.columnCount) };
}
