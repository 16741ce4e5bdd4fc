import type { KnownQuantity, Quantity } from "./quantity.ts";

/** Digits of the half-width that are shown (GUM 7.2.6: at most two). */
const SHOWN_DIGITS_OF_HALF_WIDTH = 2;
/** Decimals of the smallest number that is written out. */
const MOST_DECIMALS = 20;
/** Decimals that a number without interval is shown with, by size. */
const LARGE_NUMBER = 100;
const MEDIUM_NUMBER = 10;

/**
 * Decimal place (power of ten) to which a half-width with at most two digits reaches:
 * 93 -> 0, 930 -> 1, 0.93 -> -2. A half-width that rounds up to three digits moves one place.
 */
export function decimalPlace(halfWidth: number): number {
  const place = Math.floor(Math.log10(halfWidth)) - (SHOWN_DIGITS_OF_HALF_WIDTH - 1);
  const roundsUp = Math.round(halfWidth / 10 ** place) >= 10 ** SHOWN_DIGITS_OF_HALF_WIDTH;
  return roundsUp ? place + 1 : place;
}

/** Rounds to a decimal place and writes it without exponent: (4312.7, 1) -> "4310", (3.456, -2) -> "3.46". */
export function toPlace(value: number, place: number): string {
  if (place >= 0) {
    const step = 10 ** place;
    return withoutMinusZero((Math.round(value / step) * step).toFixed(0));
  }
  return withoutMinusZero(value.toFixed(Math.min(-place, MOST_DECIMALS)));
}

/** A number for reading, with no interval of its own: three significant digits or whole numbers. */
export function plainNumber(value: number): string {
  const size = Math.abs(value);
  if (size >= LARGE_NUMBER || Number.isInteger(value)) return withoutMinusZero(value.toFixed(0));
  if (size >= MEDIUM_NUMBER) return withoutMinusZero(value.toFixed(1));
  if (size >= 1 || size === 0) return withoutMinusZero(value.toFixed(2));
  const text = value.toPrecision(3);
  if (!text.includes("e")) return text;
  const decimals = 2 - Math.floor(Math.log10(size));
  return withoutMinusZero(value.toFixed(Math.min(decimals, MOST_DECIMALS)));
}

/** Seconds as minutes and seconds: 372 -> "6:12". */
export function minutesAndSeconds(seconds: number): string {
  const whole = Math.round(seconds);
  const sign = whole < 0 ? "-" : "";
  const size = Math.abs(whole);
  return `${sign}${Math.floor(size / 60)}:${String(size % 60).padStart(2, "0")}`;
}

const UNIT_SIGNS: ReadonlyMap<string, string> = new Map([
  ["degC", "°C"],
  ["degF", "°F"],
  ["mohm", "mΩ"],
  ["degC/A2", "°C/A²"],
  ["1", ""],
]);

/** Seconds as a length in words: 471 -> "7 min 51 s", 42 -> "42 s". */
export function lengthInWords(seconds: number): string {
  const whole = Math.round(seconds);
  return whole < 60 ? `${whole} s` : `${Math.floor(whole / 60)} min ${whole % 60} s`;
}

/** The unit as written in text: the JSON spelling with its signs; nothing for a plain number. */
export function unitText(unit: string): string {
  return UNIT_SIGNS.get(unit) ?? unit;
}

/**
 * One line of text for a quantity: "4310 ± 90 mAh", "312 s (298 to 330 s)", "at least 3300 mAh",
 * or "not known: reason". The value is rounded to the last shown digit of its half-width.
 */
export function quantityText(quantity: Quantity): string {
  if (quantity.value === null) return `not known: ${quantity.why}`;
  const text = intervalText(quantity);
  return quantity.doubt === undefined ? text : `${text} (doubtful)`;
}

/** The last place worth reading in text, whatever the interval: a revolution. */
const LAST_PLACE: ReadonlyMap<string, number> = new Map([["rev/min", 0]]);

function intervalText(quantity: KnownQuantity): string {
  const unit = unitText(quantity.unit) === "" ? "" : ` ${unitText(quantity.unit)}`;
  const { value, low, high } = quantity;
  if (low === null && high !== null) return `at most ${plainNumber(high)}${unit}`;
  if (high === null && low !== null) return `at least ${plainNumber(low)}${unit}`;
  if (low === null || high === null) return `${plainNumber(value)}${unit}`;
  const below = value - low;
  const above = high - value;
  const widest = Math.max(below, above);
  if (widest <= 0) return `${plainNumber(value)}${unit}`;
  const place = Math.max(decimalPlace(widest), LAST_PLACE.get(quantity.unit) ?? -MOST_DECIMALS);
  const isSymmetric = Math.abs(above - below) <= 10 ** place / 2;
  if (isSymmetric) return `${toPlace(value, place)} ± ${toPlace(widest, place)}${unit}`;
  return `${toPlace(value, place)}${unit} (${toPlace(low, place)} to ${toPlace(high, place)}${unit})`;
}

function withoutMinusZero(text: string): string {
  return /^-0(\.0*)?$/.test(text) ? text.slice(1) : text;
}
