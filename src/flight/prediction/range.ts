/** A number with the ends of its 95 % interval (low <= value <= high) and where it comes from. */
export interface Range {
  readonly value: number;
  readonly low: number;
  readonly high: number;
  /** "measured in 3 flights", "aircraft file", "common practice, no published source". */
  readonly basis: string;
}

/** A range of `value` with ends as factors on it. */
export function scaledRange(value: number, lowFactor: number, highFactor: number, basis: string): Range {
  return { value, low: value * lowFactor, high: value * highFactor, basis };
}

/** A range with a symmetric half-width. */
export function aboutRange(value: number, halfWidth: number, basis: string): Range {
  return { value, low: value - halfWidth, high: value + halfWidth, basis };
}
