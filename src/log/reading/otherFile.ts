import { isBlank } from "./cells.ts";

/** Characters of a line that are looked at. */
const MOST_TESTED = 400;

/** How files that people pick by mistake begin; each kind in words. */
const PAGES: readonly (readonly [RegExp, string])[] = [
  [/^\s*<(?:!doctype html|html|head|body|table)\b/i, "a web page (HTML)"],
  [/^\s*<(?:\?xml|svg|gpx|kml)\b/i, "an XML file"],
];
/** A log may begin so too, with a line about its device: decided only where no rows follow. */
const JSON_BEGIN = /^\s*[{[]\s*(?:["{[]|[\d-]+(?:\.\d+)?\s*,\s*$)/;

/** What a text file is that no logger writes, by its first lines; null when it may be a log. */
export function otherFileKind(lines: readonly string[]): string | null {
  const begin = beginOf(lines);
  return PAGES.find(([pattern]) => pattern.test(begin))?.[1] ?? null;
}

/** What a text file is in which no header names columns, by its first lines; null when it may be a log. */
export function kindWithoutHeader(lines: readonly string[]): string | null {
  return JSON_BEGIN.test(beginOf(lines)) ? "a JSON file" : null;
}

function beginOf(lines: readonly string[]): string {
  return lines
    .filter((line) => !isBlank(line))
    .slice(0, 2)
    .map((line) => line.slice(0, MOST_TESTED))
    .join(" ");
}

/** A sentence: five words or more with blanks between them, and no number. */
const PROSE = /(?:\p{L}[\p{L}'-]*,? +){4,}\p{L}/u;

/** Lines of words as in a letter or a manual. The header of a log names columns, it says nothing. */
export function isProse(lines: readonly string[]): boolean {
  return lines.some((line) => PROSE.test(line.slice(0, MOST_TESTED)));
}
