/** How a number came about. Shown beside it wherever it is shown. */
export type Basis = "measured" | "derived" | "estimated" | "predicted";

/**
 * What the two ends of an interval mean when they are not a 95 % interval:
 * `atLeast` / `atMost` are one-sided bounds, `interval` covers every value the data allow.
 */
export type BoundKind = "atLeast" | "atMost" | "interval";

/** The sample a number rests on: seconds since the first row and the 1-based line of the file. */
export interface SampleReference {
  readonly atS: number;
  readonly line: number;
}

/** A number with its 95 % interval (or its bound), its unit and how it came about. All ends finite or null. */
export interface KnownQuantity {
  readonly value: number;
  readonly low: number | null;
  readonly high: number | null;
  readonly unit: string;
  readonly basis: Basis;
  readonly bound?: BoundKind;
  /** Always present on a bound; elsewhere a remark the reader needs. */
  readonly why?: string;
  /** Why no judgement may rest on it, where the number stands as logged but something about it is wrong. */
  readonly doubt?: string;
  readonly sample?: SampleReference;
}

/** A number that cannot be given, and the reason in words. */
export interface UnknownQuantity {
  readonly value: null;
  readonly unit: string;
  readonly why: string;
}

export type Quantity = KnownQuantity | UnknownQuantity;

export function isKnown(quantity: Quantity): quantity is KnownQuantity {
  return quantity.value !== null;
}

/** The lower end of what is known; an open end gives the value itself. */
export function lowEnd({ value, low }: KnownQuantity): number {
  return low ?? value;
}

/** The upper end of what is known; an open end gives the value itself. */
export function highEnd({ value, high }: KnownQuantity): number {
  return high ?? value;
}

/** A quantity that cannot be given. */
export function unknown(unit: string, why: string): UnknownQuantity {
  return { value: null, unit, why };
}

/**
 * A value with a symmetric 95 % half-width `halfWidth` (same unit, >= 0).
 * A value or half-width that is not finite becomes unknown: NaN never leaves as a number.
 */
export function known(
  value: number,
  halfWidth: number,
  unit: string,
  basis: Basis,
  more: Pick<KnownQuantity, "why" | "sample"> = {},
): Quantity {
  return between(value, value - halfWidth, value + halfWidth, unit, basis, more);
}

/** A value with the 95 % interval `low`..`high` (same unit). Not finite becomes unknown. */
export function between(
  value: number,
  low: number,
  high: number,
  unit: string,
  basis: Basis,
  more: Pick<KnownQuantity, "why" | "sample" | "bound"> = {},
): Quantity {
  if (!Number.isFinite(value) || !Number.isFinite(low) || !Number.isFinite(high)) {
    return unknown(unit, "the computation gave no finite number");
  }
  return { value, low: Math.min(low, value), high: Math.max(high, value), unit, basis, ...more };
}

/** A lower bound: the true value is at least `low`, and how much more is not known. */
export function atLeast(value: number, low: number, unit: string, basis: Basis, why: string): Quantity {
  if (!Number.isFinite(value) || !Number.isFinite(low)) return unknown(unit, why);
  return { value, low: Math.min(low, value), high: null, unit, basis, bound: "atLeast", why };
}

/** An upper bound: the true value is at most `high`. */
export function atMost(value: number, high: number, unit: string, basis: Basis, why: string): Quantity {
  if (!Number.isFinite(value) || !Number.isFinite(high)) return unknown(unit, why);
  return { value, low: null, high: Math.max(high, value), unit, basis, bound: "atMost", why };
}
