import { nearestWord } from "../../base/words/index.ts";
import type { GivenFacts } from "./entry.ts";
import { bookSentences } from "./sentences.ts";

/**
 * Says that no flight of the aircraft flew on a pack of this name, where others are known by name: a slip of the
 * typing would start a series of its own. Null for a known one, and where no pack has a name yet.
 */
export function unknownPack(
  pack: string | null,
  flights: readonly { readonly given: Pick<GivenFacts, "pack"> }[],
): string | null {
  if (pack === null) return null;
  const known = [...new Set(flights.flatMap(({ given }) => given.pack ?? []))].sort();
  if (known.length === 0 || known.includes(pack)) return null;
  return bookSentences.packUnknown(pack, nearestWord(pack, known), known);
}
