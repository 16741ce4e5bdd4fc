import { createHash } from "node:crypto";
import type { LogBytes } from "../../log/reading/index.ts";

/** SHA-256 of the bytes as lower-case hex. */
export function sha256Of(bytes: Uint8Array | string): string {
  return createHash("sha256").update(bytes).digest("hex");
}

const BYTES_AT_ONCE = 1 << 20;

/** The same of bytes that are read a part at a time. */
export function sha256OfParts(bytes: LogBytes): string {
  const hash = createHash("sha256");
  for (let at = 0; at < bytes.length; at += BYTES_AT_ONCE) {
    hash.update(bytes.subarray(at, Math.min(bytes.length, at + BYTES_AT_ONCE)));
  }
  return hash.digest("hex");
}
