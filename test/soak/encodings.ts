export const WRITTEN_ENCODINGS = ["utf-8", "utf-8-bom", "utf-16le", "utf-16be"] as const;
export type WrittenEncoding = (typeof WRITTEN_ENCODINGS)[number];

/** The bytes of a text; UTF-16 with its byte order mark. */
export function encoded(text: string, encoding: WrittenEncoding): Uint8Array {
  if (encoding === "utf-8") return new TextEncoder().encode(text);
  if (encoding === "utf-8-bom") return new TextEncoder().encode(`\ufeff${text}`);
  const marked = `\ufeff${text}`;
  const bytes = new Uint8Array(2 * marked.length);
  const view = new DataView(bytes.buffer);
  for (let at = 0; at < marked.length; at++) {
    view.setUint16(2 * at, marked.charCodeAt(at), encoding === "utf-16le");
  }
  return bytes;
}
