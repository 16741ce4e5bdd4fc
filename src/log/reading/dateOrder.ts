import { dayNumber, fullYear } from "./clockText.ts";
import type { DateOrder } from "./contract.ts";

export interface DateFields {
  readonly first: number;
  readonly second: number;
  readonly third: number;
}

/** Undoes `packDate`. */
export function dateFields(code: number): DateFields {
  return { first: Math.floor(code / 1e8), second: Math.floor(code / 1e4) % 1e4, third: code % 1e4 };
}

/** Days since 1970-01-01, NaN if the fields are no day in this order. */
export function dayOfCode(code: number, order: DateOrder): number {
  if (Number.isNaN(code)) return Number.NaN;
  const { first, second, third } = dateFields(code);
  const [year, month, day] =
    order === "ymd"
      ? [first, second, third]
      : order === "dmy"
        ? [third, second, first]
        : [third, first, second];
  return dayNumber(fullYear(year), month, day) ?? Number.NaN;
}

export interface DateOrderChoice {
  readonly order: DateOrder;
  readonly isProven: boolean;
}

/**
 * The order of a column's date fields: a year of four digits in front, a field above 12, or the order whose
 * days lie closest together proves it; with points between the fields the day comes first (common practice,
 * no published source).
 */
export function findDateOrder(
  codes: Float64Array,
  given: DateOrder | null,
  pattern: string,
): DateOrderChoice {
  if (given !== null) return { order: given, isProven: true };
  const distinct = [...new Set(codes)].filter((code) => !Number.isNaN(code));
  if (distinct.some((code) => dateFields(code).first > 31)) return { order: "ymd", isProven: true };
  if (distinct.some((code) => dateFields(code).first > 12)) return { order: "dmy", isProven: true };
  if (distinct.some((code) => dateFields(code).second > 12)) return { order: "mdy", isProven: true };
  const spans = (["dmy", "mdy"] as const).map((order) => {
    const days = distinct.map((code) => dayOfCode(code, order));
    return (
      days.reduce((most, day) => Math.max(most, day), -Infinity) -
      days.reduce((least, day) => Math.min(least, day), Infinity)
    );
  });
  if (spans[0] !== spans[1]) return { order: spans[0]! < spans[1]! ? "dmy" : "mdy", isProven: true };
  const isSame = distinct.every((code) => dateFields(code).first === dateFields(code).second);
  return { order: "dmy", isProven: isSame || /^\d+\./.test(pattern) };
}
