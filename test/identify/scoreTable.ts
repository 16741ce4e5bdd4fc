/** One estimate against the truth, in the unit in which errors are judged. */
export interface Score {
  readonly error: number;
  readonly halfWidth: number;
  readonly isCovered: boolean;
}

/** What was seen over many flights for one quantity. */
export interface ScoreRow {
  readonly medianError: number;
  readonly cover: number;
  readonly medianHalfWidth: number;
  readonly shareGiven: number;
  readonly count: number;
}

interface KnownOrNot {
  readonly value: number | null;
  readonly low?: number | null;
  readonly high?: number | null;
}

/** Relative to the truth, in percent. */
export function relativeScore(quantity: KnownOrNot, truth: number): Score | null {
  return scoreIn(quantity, truth, 100 / truth);
}

/** In the quantity's own unit. */
export function absoluteScore(quantity: KnownOrNot, truth: number): Score | null {
  return scoreIn(quantity, truth, 1);
}

function scoreIn({ value, low, high }: KnownOrNot, truth: number, factor: number): Score | null {
  if (value === null || low == null || high == null) return null;
  return {
    error: (value - truth) * factor,
    halfWidth: ((high - low) / 2) * factor,
    isCovered: low <= truth && truth <= high,
  };
}

function middle(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[values.length >> 1] ?? Number.NaN;
}

/** `scores` of the flights that meet the preconditions, null where no estimate was given. */
export function scoreRow(scores: readonly (Score | null)[]): ScoreRow {
  const given = scores.filter((score) => score !== null);
  return {
    medianError: middle(given.map((score) => Math.abs(score.error))),
    cover: given.filter((score) => score.isCovered).length / given.length,
    medianHalfWidth: middle(given.map((score) => score.halfWidth)),
    shareGiven: given.length / scores.length,
    count: scores.length,
  };
}
