/** Plain arrays and typed arrays alike. */
export type Numbers = ArrayLike<number>;

/**
 * Refuses values that are not finite. The policy of this folder: a caller drops missing values first,
 * because a NaN that slips into a sort or a sum gives a plausible wrong number.
 * @throws RangeError naming the place and the value
 */
export function requireFinite(values: Numbers, what: string): void {
  for (let i = 0; i < values.length; i++) {
    if (!Number.isFinite(values[i])) {
      throw new RangeError(`${what} needs finite numbers: value ${i} of ${values.length} is ${values[i]}`);
    }
  }
}

/** @throws RangeError when there are fewer than `least` values */
export function requireCount(values: { readonly length: number }, least: number, what: string): void {
  if (values.length < least) {
    throw new RangeError(`${what} needs at least ${least} values: got ${values.length}`);
  }
}

/** @throws RangeError when the two lists differ in length */
export function requireSameLength(first: Numbers, second: Numbers, what: string): void {
  if (first.length !== second.length) {
    throw new RangeError(
      `${what} needs lists of the same length: got ${first.length} and ${second.length} values`,
    );
  }
}

/** @throws RangeError unless low <= value <= high (NaN never passes) */
export function requireWithin(value: number, low: number, high: number, what: string): void {
  if (!(value >= low && value <= high)) {
    throw new RangeError(`${what} must lie between ${low} and ${high}: got ${value}`);
  }
}
