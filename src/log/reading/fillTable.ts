import type { Notice } from "../../base/notices/index.ts";
import { CleanRows } from "./cleanRows.ts";
import type { Decoding } from "./encoding.ts";
import { MOST_COLUMNS } from "./limits.ts";
import { BYTES_AT_ONCE, lineBlocks } from "./lines.ts";
import * as say from "./sentences.ts";
import type { TableBuilder } from "./table.ts";

const LF = 0x0a;
/** Bytes handed over as lines of text before clean rows are tried again; doubled while none are found. */
const FIRST_STRETCH = 1 << 12;
/** Rows that tell how long a row of this file is. */
const TELLING_ROWS = 1000;

/** How far a file has been read. */
interface Place {
  at: number;
  /** 1-based line that starts there. */
  line: number;
}

/**
 * Hands a file to the builder: lines of plain numbers as numbers, all others as text. Returns why it is refused,
 * or null. `usesCleanRows` false hands over everything as text: the same table, slower.
 */
export function fillTable(
  builder: TableBuilder,
  bytes: Uint8Array,
  decoding: Decoding,
  delimiter: string,
  usesCleanRows: boolean,
): Notice | null {
  const isWide = decoding.encoding === "utf-16le" || decoding.encoding === "utf-16be";
  const lastLineEnd = usesCleanRows && !isWide ? bytes.lastIndexOf(LF, decoding.end - 1) + 1 : 0;
  const whole = bytes.subarray(0, lastLineEnd);
  const place: Place = { at: decoding.start, line: 1 };
  let stretch = FIRST_STRETCH;
  while (place.at < decoding.end) {
    if (addCleanRun(builder, whole, place, delimiter)) stretch = FIRST_STRETCH;
    const next = bytes.indexOf(LF, place.at + stretch) + 1;
    const end = place.at < lastLineEnd && next > 0 && next < decoding.end ? next : decoding.end;
    const refusal =
      refusalOf(builder) ?? addText(builder, bytes, { ...decoding, end }, place, end === decoding.end);
    if (refusal !== null) return refusal;
    stretch = Math.min(2 * stretch, BYTES_AT_ONCE);
  }
  return null;
}

/** Adds rows of plain numbers for as long as they follow each other; true if there were any. */
function addCleanRun(builder: TableBuilder, bytes: Uint8Array, place: Place, delimiter: string): boolean {
  if (place.at >= bytes.length || !builder.takesCleanRows(place.line)) return false;
  const { width, mark } = builder.form;
  const scanner = CleanRows.of(width, delimiter);
  const first = place.at;
  for (;;) {
    const rows = scanner?.scan(bytes, place.at, mark) ?? 0;
    if (scanner === null || rows === 0 || builder.tooLarge) return place.at > first;
    const rowBytes = (scanner.end - place.at) / rows;
    if (rows >= TELLING_ROWS) builder.reserve(Math.ceil((bytes.length - place.at) / rowBytes));
    builder.addCleanRows(scanner.values, rows, place.line);
    place.at = scanner.end;
    place.line += rows;
  }
}

function addText(
  builder: TableBuilder,
  bytes: Uint8Array,
  decoding: Decoding,
  place: Place,
  isEndOfFile: boolean,
): Notice | null {
  const part = { ...decoding, start: place.at };
  for (const block of lineBlocks(bytes, part, BYTES_AT_ONCE, place.line)) {
    if (block.overlongLine !== null) {
      return { code: "line-too-long", severity: "refusal", text: say.lineTooLong(block.overlongLine) };
    }
    builder.addBlock({ ...block, isLast: block.isLast && isEndOfFile });
    place.line = block.firstLine + block.lines.length;
    const refusal = refusalOf(builder);
    if (refusal !== null) return refusal;
  }
  place.at = decoding.end;
  return null;
}

function refusalOf(builder: TableBuilder): Notice | null {
  if (builder.tooLarge) return { code: "too-many-rows", severity: "refusal", text: say.tooManyRows() };
  if (builder.columnCount <= MOST_COLUMNS) return null;
  return { code: "too-many-columns", severity: "refusal", text: say.tooManyColumns(builder.columnCount) };
}
