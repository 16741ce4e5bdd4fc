import { hasBadByteInNumber, looksBinary, looksUtf16, SAMPLED_BYTES } from "./byteShapes.ts";
import type { Encoding } from "./contract.ts";
import type { LogBytes } from "./logBytes.ts";

/** Where the text of a file lies and how its bytes become characters. */
export interface Decoding {
  readonly encoding: Encoding;
  /** First and one past the last byte of text: no BOM, no erased tail. */
  readonly start: number;
  readonly end: number;
  /** Bytes after the text that an erased or pre-allocated card leaves; 0 if none. */
  readonly tailBytes: number;
  /** No BOM and not UTF-8: the encoding was recognised from the bytes. */
  readonly isGuessed: boolean;
}

const BOMS: readonly { readonly encoding: Encoding; readonly bytes: readonly number[] }[] = [
  { encoding: "utf-8-bom", bytes: [0xef, 0xbb, 0xbf] },
  { encoding: "utf-16le", bytes: [0xff, 0xfe] },
  { encoding: "utf-16be", bytes: [0xfe, 0xff] },
];

/** The encoding of a log, or why its bytes are no log. */
export function findEncoding(bytes: LogBytes): Decoding | "empty" | "binary" {
  if (bytes.length === 0) return "empty";
  const sample = bytes.subarray(0, SAMPLED_BYTES);
  const bom = BOMS.find((each) => each.bytes.every((byte, index) => sample[index] === byte));
  const start = bom?.bytes.length ?? 0;
  const wide = bom === undefined ? looksUtf16(sample) : null;
  if (bom !== undefined && bom.encoding !== "utf-8-bom") {
    return placed(bytes, bom.encoding, start, textEnd16(bytes, start), false);
  }
  if (wide !== null) return placed(bytes, wide, start, textEnd16(bytes, start), true);
  const end = textEnd8(bytes, start);
  if (end <= start) return "empty";
  if (looksBinary(bytes.subarray(start, Math.min(end, start + SAMPLED_BYTES)))) return "binary";
  if (bom !== undefined || isUtf8(bytes, start, end)) {
    return placed(bytes, bom?.encoding ?? "utf-8", start, end, false);
  }
  const isWestern = !hasBadByteInNumber(bytes.subarray(start, end));
  return placed(bytes, isWestern ? "windows-1252" : "utf-8", start, end, isWestern);
}

function placed(bytes: LogBytes, encoding: Encoding, start: number, end: number, isGuessed: boolean) {
  if (end <= start) return "empty";
  return { encoding, start, end, tailBytes: bytes.length - end, isGuessed };
}

const isErased = (byte: number | undefined): boolean => byte === 0x00 || byte === 0xff;

function textEnd8(bytes: LogBytes, start: number): number {
  for (let end = bytes.length; end > start; end -= CHECKED_AT_ONCE) {
    const from = Math.max(start, end - CHECKED_AT_ONCE);
    const last = bytes.subarray(from, end).findLastIndex((byte) => !isErased(byte));
    if (last >= 0) return from + last + 1;
  }
  return start;
}

/** UTF-16: erased in whole code units, so that the zero half of the last character stays. */
function textEnd16(log: LogBytes, start: number): number {
  const bytes = log.subarray(0, log.length);
  let end = bytes.length - ((bytes.length - start) % 2);
  while (end > start && isErased(bytes[end - 1]) && bytes[end - 2] === bytes[end - 1]) end -= 2;
  return end;
}

const CHECKED_AT_ONCE = 1 << 20;

/** Eight bytes at once where they lie evenly in memory. */
function isAscii(bytes: Uint8Array): boolean {
  const uneven = Math.min(bytes.length, (4 - (bytes.byteOffset % 4)) % 4);
  const words = Math.floor((bytes.length - uneven) / 8);
  const four = new Uint32Array(bytes.buffer, bytes.byteOffset + uneven, 2 * words);
  for (let at = 0; at < four.length; at += 2)
    if (((four[at]! | four[at + 1]!) & 0x80808080) !== 0) return false;
  const isPlain = (byte: number) => byte < 0x80;
  return bytes.subarray(0, uneven).every(isPlain) && bytes.subarray(uneven + 8 * words).every(isPlain);
}

/** True for UTF-8; a character cut off by the end of the file is forgiven. */
function isUtf8(bytes: LogBytes, start: number, end: number): boolean {
  const decoder = new TextDecoder("utf-8", { fatal: true });
  let isPlain = true;
  try {
    for (let at = start; at < end; at += CHECKED_AT_ONCE) {
      const part = bytes.subarray(at, Math.min(end, at + CHECKED_AT_ONCE));
      isPlain &&= isAscii(part);
      if (!isPlain) decoder.decode(part, { stream: true });
    }
    return true;
  } catch {
    return false;
  }
}
