/** Powers of ten that a double holds exactly. */
export const EXACT_POWERS = Array.from({ length: 23 }, (_, power) => 10 ** power);
/** Digits whose integer a double holds exactly. */
export const EXACT_DIGITS = 15;
const POINT = 0x2e;
const COMMA = 0x2c;
const MINUS = 0x2d;
const WRITTEN = /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d{1,6})?$/;
/** Digits in groups of three: by the other mark, a space, a narrow space or an apostrophe. */
const GROUPED = /^[+-]?\d{1,3}(?:([.,' \u00a0\u2009\u202f\u2019])\d{3})(?:\1\d{3})*(?:[.,]\d*)?$/;

/**
 * The number that a cell holds, or NaN: the only place where text becomes a number.
 * Accepts signs (also U+2212), "+5", "035.0", ".5", "35.", exponents and digit groups.
 * Words, "", hexadecimal, infinite and too large values are NaN. `text` has no outer blanks.
 */
export function strictNumber(text: string, mark: "." | ","): number {
  const plain = plainNumber(text, mark);
  return Number.isNaN(plain) ? unusualNumber(text, mark) : plain;
}

/** Digits with at most one mark, converted exactly: both parts of the quotient are exact doubles. */
function plainNumber(text: string, mark: "." | ","): number {
  const markCode = mark === "." ? POINT : COMMA;
  const isNegative = text.charCodeAt(0) === MINUS;
  const first = isNegative ? 1 : 0;
  let digits = 0;
  let markAt = -1;
  let value = 0;
  for (let at = first; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code >= 0x30 && code <= 0x39) {
      value = value * 10 + (code - 0x30);
      digits++;
    } else if (code === markCode && markAt < 0) markAt = at;
    else return Number.NaN;
  }
  if (digits === 0 || digits > EXACT_DIGITS) return Number.NaN;
  const size = markAt < 0 ? value : value / EXACT_POWERS[text.length - 1 - markAt]!;
  return isNegative ? -size : size;
}

function unusualNumber(text: string, mark: "." | ","): number {
  if (text.length === 0 || text.length > 64) return Number.NaN;
  const signed = text.replace(/^[\u2212\u2010\u2011\u2013\ufe63\uff0d]/, "-");
  const pointed = withPoint(signed, mark);
  if (pointed === null || !WRITTEN.test(pointed)) return Number.NaN;
  const value = Number(pointed);
  return Number.isFinite(value) ? value : Number.NaN;
}

/** The text with a point as its only mark, digit groups closed up; null if the marks do not fit. */
function withPoint(text: string, mark: "." | ","): string | null {
  const group = GROUPED.exec(text)?.[1];
  if (group !== undefined && group !== mark) {
    const closed = text.replaceAll(group, "");
    return mark === "," ? closed.replace(",", ".") : closed.includes(",") ? null : closed;
  }
  if (mark === ".") return text;
  return text.includes(".") ? null : text.replace(",", ".");
}
