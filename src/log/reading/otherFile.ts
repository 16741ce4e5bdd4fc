import { isBlank } from "./cells.ts";

/** Characters of a line that are looked at. */
const MOST_TESTED = 400;

/** How files that people pick by mistake begin; each kind in words. */
const KINDS: readonly (readonly [RegExp, string])[] = [
  [/^\s*<(?:!doctype html|html|head|body|table)\b/i, "a web page (HTML)"],
  [/^\s*<(?:\?xml|svg|gpx|kml)\b/i, "an XML file"],
  [/^\s*[{[]\s*(?:["{[]|[\d-]+(?:\.\d+)?\s*,\s*$)/, "a JSON file"],
];

/** What a text file is that no logger writes, by its first lines; null when it may be a log. */
export function otherFileKind(lines: readonly string[]): string | null {
  const begin = lines
    .filter((line) => !isBlank(line))
    .slice(0, 2)
    .map((line) => line.slice(0, MOST_TESTED))
    .join(" ");
  return KINDS.find(([pattern]) => pattern.test(begin))?.[1] ?? null;
}

/** A sentence: five words or more with blanks between them, and no number. */
const PROSE = /(?:\p{L}[\p{L}'-]*,? +){4,}\p{L}/u;

/** Lines of words as in a letter or a manual. The header of a log names columns, it says nothing. */
export function isProse(lines: readonly string[]): boolean {
  return lines.some((line) => PROSE.test(line.slice(0, MOST_TESTED)));
}
