import { cellsOfLine, countOf, isBlank, isComment, isValue } from "./cells.ts";

const CANDIDATES = [",", ";", "\t", "|", " "] as const;
const LOOKED_AT = 300;
const HINT = /^\uFEFF?"?sep=(.)"?\s*$/i;
const NAMED: Readonly<Record<string, string>> = {
  comma: ",",
  semicolon: ";",
  tab: "\t",
  "\\t": "\t",
  pipe: "|",
  space: " ",
  spaces: " ",
};

/** A delimiter as a user types it. */
export function delimiterFromText(text: string): string {
  return NAMED[text.toLowerCase()] ?? text;
}

/** The delimiter that a first line "sep=;" states, or null. */
export function hintedDelimiter(firstLine: string): string | null {
  return HINT.exec(firstLine)?.[1] ?? null;
}

/**
 * The delimiter under which most lines have one common width and the largest share of cells that are values.
 * A tie goes to the delimiter that gives more cells. A file of one column counts as comma-delimited.
 */
export function findDelimiter(lines: readonly string[]): string {
  const looked = spread(lines.filter((line) => !isBlank(line) && !isComment(line)));
  let best = { delimiter: ",", score: 0, width: 1 };
  for (const delimiter of CANDIDATES) {
    if (!looked.some((line) => isCutBy(line, delimiter))) continue;
    const { score, width } = fitOf(looked, delimiter);
    const isBetter = score > best.score * 1.02 || (score > best.score * 0.98 && width > best.width);
    if (width > 1 && isBetter) best = { delimiter, score, width };
  }
  return best.delimiter;
}

/** Blanks stand for tabs too. */
function isCutBy(line: string, delimiter: string): boolean {
  return line.includes(delimiter) || (delimiter === " " && line.includes("\t"));
}

/** Lines from all over the head when it is long. */
function spread(lines: readonly string[]): readonly string[] {
  const step = Math.max(1, Math.floor(lines.length / LOOKED_AT));
  return lines.filter((_, index) => index % step === 0);
}

function fitOf(lines: readonly string[], delimiter: string): { score: number; width: number } {
  const byWidth = new Map<number, { lines: number; share: number }>();
  for (const line of lines) {
    const cells = cellsOfLine(line, delimiter);
    const filled = cells.filter((cell) => cell !== "");
    const values = countOf(filled, isValue);
    if (values === 0) continue;
    const entry = byWidth.get(cells.length) ?? { lines: 0, share: 0 };
    byWidth.set(cells.length, { lines: entry.lines + 1, share: entry.share + values / filled.length });
  }
  let best = { score: 0, width: 1 };
  for (const [width, entry] of byWidth) {
    const score = entry.share / lines.length;
    if (score > best.score) best = { score, width };
  }
  return best;
}
