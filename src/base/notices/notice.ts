/**
 * How much a notice matters: `note` is worth knowing, `warning` says what was lost or doubtful,
 * `question` needs a choice before anything can be computed, `refusal` means the input cannot be used.
 */
export type Severity = "note" | "warning" | "question" | "refusal";

/** What the reader must know about the data. Problems in the data are records, not exceptions. */
export interface Notice {
  /** Stable identifier in kebab-case, for programs. */
  readonly code: string;
  readonly severity: Severity;
  /** What, where, the value and what to do now, in plain words. */
  readonly text: string;
  /** How many cells or rows it is about. */
  readonly count?: number;
  /** File lines, 1-based as an editor shows them; the first 20. */
  readonly lines?: readonly number[];
  /** The exact command-line options that settle a question, each ready to paste. */
  readonly options?: readonly string[];
}

export const LISTED_LINES = 20;

/** The first lines of a list, as a notice keeps them. */
export function firstLines(lines: readonly number[]): readonly number[] {
  return lines.slice(0, LISTED_LINES);
}

/** "line 7", "lines 7, 9 and 12", "lines 7, 9, 12 and 5 more" for a sentence; `shown` lines at most. */
export function linesText(lines: readonly number[], count = lines.length, shown = 3): string {
  const first = lines.slice(0, shown);
  if (first.length === 0) return "no line";
  if (count === 1) return `line ${first[0]}`;
  const more = count - first.length;
  if (more > 0) return `lines ${first.join(", ")} and ${more} more`;
  return `lines ${first.slice(0, -1).join(", ")} and ${first.at(-1)}`;
}
