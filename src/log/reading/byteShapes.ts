import { strictNumber } from "./strictNumber.ts";

/** Bytes from the start of a text that its shape is judged by. */
export const SAMPLED_BYTES = 65_536;
/** Share of control characters or of scattered NUL above which a file is no text. */
const MOST_CONTROL_SHARE = 0.01;
/** Files that announce themselves: PNG, ZIP (spreadsheets), PDF, GZIP, JPEG, old office files, GIF. */
const SIGNATURES: readonly (readonly number[])[] = [
  [0x89, 0x50, 0x4e, 0x47],
  [0x50, 0x4b, 0x03, 0x04],
  [0x25, 0x50, 0x44, 0x46],
  [0x1f, 0x8b],
  [0xff, 0xd8, 0xff],
  [0xd0, 0xcf, 0x11, 0xe0],
  [0x47, 0x49, 0x46, 0x38],
];

/** True for bytes that are no text in any encoding read here. Long runs of NUL are holes in a text, not a sign. */
export function looksBinary(bytes: Uint8Array): boolean {
  if (SIGNATURES.some((signature) => signature.every((byte, index) => bytes[index] === byte))) return true;
  const length = Math.min(bytes.length, SAMPLED_BYTES);
  let control = 0;
  let nulRuns = 0;
  for (let at = 0; at < length; at++) {
    const byte = bytes[at]!;
    if (byte === 0) {
      if (bytes[at - 1] !== 0) nulRuns++;
    } else if (byte < 0x20 && (byte < 0x09 || byte > 0x0d) && byte !== 0x1a) control++;
  }
  return control + nulRuns > Math.max(1, length * MOST_CONTROL_SHARE);
}

/** UTF-16 without BOM: every second byte of ASCII text is NUL. */
export function looksUtf16(bytes: Uint8Array): "utf-16le" | "utf-16be" | null {
  const pairs = Math.floor(Math.min(bytes.length, SAMPLED_BYTES) / 2);
  if (pairs < 2) return null;
  let first = 0;
  let second = 0;
  for (let pair = 0; pair < pairs; pair++) {
    const isFirstNul = bytes[2 * pair] === 0;
    const isSecondNul = bytes[2 * pair + 1] === 0;
    if (isFirstNul && !isSecondNul) first++;
    if (isSecondNul && !isFirstNul) second++;
  }
  if (second > 0.7 * pairs) return "utf-16le";
  return first > 0.7 * pairs ? "utf-16be" : null;
}

/** True if a byte beyond ASCII stands inside a number, or erased bytes stand anywhere: then the file is damaged, not in another encoding. */
export function hasBadByteInNumber(bytes: Uint8Array): boolean {
  for (let at = 0; at < bytes.length; at++) {
    if (bytes[at]! < 0x80) continue;
    if (isErasedRun(bytes, at)) return true;
    let start = at;
    while (start > 0 && !isCellEnd(bytes[start - 1]!)) start--;
    let end = at;
    while (end < bytes.length && !isCellEnd(bytes[end]!)) end++;
    const kept = bytes.subarray(start, Math.min(end, start + 64)).filter((byte) => byte < 0x80);
    if (!Number.isNaN(strictNumber(String.fromCharCode(...kept), "."))) return true;
    at = end;
  }
  return false;
}

/** Four erased bytes in a row: no word of any language. */
function isErasedRun(bytes: Uint8Array, at: number): boolean {
  return [0, 1, 2, 3].every((step) => bytes[at + step] === 0xff);
}

/** Comma, semicolon, tab, pipe, space, line ends. */
function isCellEnd(byte: number): boolean {
  return (
    byte === 0x2c ||
    byte === 0x3b ||
    byte === 0x09 ||
    byte === 0x7c ||
    byte === 0x20 ||
    byte === 0x0a ||
    byte === 0x0d
  );
}
