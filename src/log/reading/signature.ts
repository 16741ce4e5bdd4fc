const PRIME = 0x01000193;
const FIRST_SEED = 0x811c9dc5;
const SECOND_SEED = 0x9747b28c;

/** FNV-1a, 32 bit (Fowler, Noll, Vo), over UTF-16 code units. */
function fnv(text: string, seed: number): string {
  let hash = seed;
  for (let at = 0; at < text.length; at++) hash = Math.imul(hash ^ text.charCodeAt(at), PRIME) >>> 0;
  return hash.toString(16).padStart(8, "0");
}

/** A short text that is the same for logs with the same header and units row, case and outer blanks apart. */
export function headerSignature(header: readonly string[], units: readonly string[] | null): string {
  const text = [...header, "", ...(units ?? [])].map((name) => name.trim().toLowerCase()).join("\u001f");
  return `${header.length}-${fnv(text, FIRST_SEED)}${fnv(text, SECOND_SEED)}`;
}
