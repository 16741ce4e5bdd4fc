import { distance } from "fastest-levenshtein";

/** A word further away than this share of its length is no typing slip. */
const LARGEST_SHARE = 0.4;
/** Two letters swapped are two edits, so even a short word may differ by two. */
const ALWAYS_ALLOWED = 2;

/**
 * The known word a mistyped one most likely meant, or null when none is near.
 * Case is ignored. Of words equally near the one of the nearest length wins, then the first of the list.
 */
export function nearestWord(typed: string, known: readonly string[]): string | null {
  const wanted = typed.toLowerCase();
  let best: { word: string; edits: number; lengthGap: number } | null = null;
  for (const word of known) {
    const edits = distance(wanted, word.toLowerCase());
    const lengthGap = Math.abs(word.length - typed.length);
    if (edits > allowedEdits(typed, word)) continue;
    const isNearer =
      best === null || edits < best.edits || (edits === best.edits && lengthGap < best.lengthGap);
    if (isNearer) best = { word, edits, lengthGap };
  }
  return best?.word ?? null;
}

function allowedEdits(typed: string, word: string): number {
  const longer = Math.max(typed.length, word.length);
  return Math.min(longer - 1, Math.max(ALWAYS_ALLOWED, Math.floor(longer * LARGEST_SHARE)));
}
