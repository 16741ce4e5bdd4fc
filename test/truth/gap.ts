import type { Quantity } from "../../src/base/quantity/index.ts";

/** "name: got 1 expected 2 ± 0.5" when a value misses the truth by more than `tolerance`, else nothing. */
export function gap(name: string, got: Quantity, truth: number | null, tolerance: number): string[] {
  if (truth === null)
    return got.value === null ? [] : [`${name}: got ${got.value} where nothing can be known`];
  if (got.value === null) return [`${name}: not given (${got.why}), expected ${truth.toPrecision(6)}`];
  if (Math.abs(got.value - truth) <= tolerance) return [];
  const difference = got.value - truth;
  return [
    `${name}: got ${got.value.toPrecision(6)}, expected ${truth.toPrecision(6)}, ` +
      `tolerance ${tolerance.toPrecision(3)}, difference ${difference.toPrecision(3)}`,
  ];
}

/** True when the interval (or bound) of a known quantity holds the truth. */
export function covers(got: Quantity, truth: number): boolean {
  if (got.value === null) return false;
  return (got.low ?? Number.NEGATIVE_INFINITY) <= truth && truth <= (got.high ?? Number.POSITIVE_INFINITY);
}
