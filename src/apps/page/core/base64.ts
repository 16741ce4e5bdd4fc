/** Bytes that are turned at once: a multiple of 3, so that the parts join without padding. */
const PART = 3 * 8192;

export function toBase64(bytes: Uint8Array): string {
  const parts: string[] = [];
  for (let from = 0; from < bytes.length; from += PART) {
    parts.push(btoa(String.fromCharCode(...bytes.subarray(from, from + PART))));
  }
  return parts.join("");
}

/** Throws on text that is no base 64. */
export function fromBase64(text: string): Uint8Array {
  return Uint8Array.from(atob(text), (sign) => sign.charCodeAt(0));
}
