import type { Encoding } from "./contract.ts";
import type { Decoding } from "./encoding.ts";
import { LONGEST_LINE } from "./limits.ts";
import type { LogBytes } from "./logBytes.ts";

/** Consecutive lines of a file, without their ends. */
export interface LineBlock {
  readonly lines: string[];
  /** 1-based file line of the first. */
  readonly firstLine: number;
  /** False only for the last line of a file that ends without a line end. */
  readonly isTerminated: boolean;
  /** The block ends the file. */
  readonly isLast: boolean;
  /** A line longer than the limit, at which reading stopped. */
  readonly overlongLine: number | null;
}

export const BYTES_AT_ONCE = 1 << 19;
const LF = 0x0a;
const CR = 0x0d;
/** A byte order mark, also where two files were put one after the other. */
const BOM = 0xfeff;

const DECODERS: Readonly<Record<Encoding, string>> = {
  "utf-8": "utf-8",
  "utf-8-bom": "utf-8",
  "utf-16le": "utf-16le",
  "utf-16be": "utf-16be",
  "windows-1252": "windows-1252",
};

/**
 * The lines of a log, block by block, so that the whole text never exists at once.
 * A line ends with LF, CRLF, CR or CRCRLF. Bytes that are no characters become U+FFFD.
 * `bytesAtOnce` changes nothing but the size of the blocks; `start` of the decoding begins line `line`.
 */
export function* lineBlocks(
  bytes: LogBytes,
  decoding: Decoding,
  bytesAtOnce = BYTES_AT_ONCE,
  line = 1,
): Generator<LineBlock> {
  const decoder = new TextDecoder(DECODERS[decoding.encoding], { ignoreBOM: true });
  let rest = "";
  let firstLine = line;
  for (let at = decoding.start; at < decoding.end; at += bytesAtOnce) {
    const end = Math.min(at + bytesAtOnce, decoding.end);
    const isLast = end === decoding.end;
    // Node 20 decodes a last piece of Windows-1252 as Latin-1; one byte is one character, so no piece is the last.
    const stream = !isLast || decoding.encoding === "windows-1252";
    const text = rest + decoder.decode(bytes.subarray(at, end), { stream });
    const lines: string[] = [];
    rest = text.slice(cutLines(text, isLast, lines));
    const isOverlong = rest.length > LONGEST_LINE || lines.some((line) => line.length > LONGEST_LINE);
    const isTerminated = rest.length === 0;
    if (isLast && !isTerminated) lines.push(withoutBom(rest));
    const overlongAt = lines.findIndex((line) => line.length > LONGEST_LINE);
    const overlongLine = isOverlong ? firstLine + (overlongAt < 0 ? lines.length : overlongAt) : null;
    yield { lines, firstLine, isTerminated: !isLast || isTerminated, isLast, overlongLine };
    if (isOverlong) return;
    firstLine += lines.length;
  }
}

/** Puts the complete lines of a text into `lines`; returns where the incomplete rest starts. */
function cutLines(text: string, isLast: boolean, lines: string[]): number {
  let start = 0;
  let nextCr = text.indexOf("\r");
  let nextLf = text.indexOf("\n");
  while (nextLf >= 0 || nextCr >= 0) {
    const isCrFirst = nextCr >= 0 && (nextLf < 0 || nextCr < nextLf);
    const end = isCrFirst ? nextCr : nextLf;
    const after = isCrFirst ? afterCr(text, nextCr, isLast) : nextLf + 1;
    if (after < 0) return start;
    lines.push(withoutBom(text.slice(start, end)));
    start = after;
    if (nextCr >= 0 && nextCr < start) nextCr = text.indexOf("\r", start);
    if (nextLf >= 0 && nextLf < start) nextLf = text.indexOf("\n", start);
  }
  return start;
}

/** Index after CR, CRLF or CRCRLF; -1 when the next characters, not read yet, decide. */
function afterCr(text: string, at: number, isLast: boolean): number {
  if (!isLast && at + 2 >= text.length) return -1;
  if (text.charCodeAt(at + 1) === LF) return at + 2;
  return text.charCodeAt(at + 1) === CR && text.charCodeAt(at + 2) === LF ? at + 3 : at + 1;
}

function withoutBom(line: string): string {
  return line.charCodeAt(0) === BOM ? line.slice(1) : line;
}
