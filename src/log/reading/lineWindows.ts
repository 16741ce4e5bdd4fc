import type { Decoding } from "./encoding.ts";
import type { LogBytes } from "./logBytes.ts";

const LF = 0x0a;
const BYTES_OF_A_WINDOW = 1 << 20;

/** Consecutive bytes of a file that end with a line end, or with the file. */
export interface LineWindow {
  readonly bytes: Uint8Array;
  /** How many follow. */
  readonly bytesAfter: number;
}

/**
 * The text of a file, a window after the other: so much of it is in memory at once. A window grows where no line
 * ends in it; `isWhole` gives one window (two bytes a character: a byte of LF ends no line there).
 */
export function* lineWindows(bytes: LogBytes, text: Decoding, isWhole: boolean): Generator<LineWindow> {
  let size = isWhole ? text.end : BYTES_OF_A_WINDOW;
  for (let at = text.start; at < text.end; ) {
    const part = bytes.subarray(at, Math.min(text.end, at + size));
    const isLast = at + part.length >= text.end;
    const used = isLast ? part.length : part.lastIndexOf(LF) + 1;
    if (used === 0) size *= 2;
    else yield { bytes: part.subarray(0, used), bytesAfter: text.end - at - used };
    at += used;
  }
}
