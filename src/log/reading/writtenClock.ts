import { dateFields } from "./dateOrder.ts";

const DATE = /^(\d{1,4})([-/.])(\d{1,2})\2(\d{1,4})/;
const CLOCK = /(\d{1,2}):(\d{2})(?::(\d{2}))?(?:([.,])(\d{1,9}))?( ?[AaPp]\.?[Mm]\.?)?(.*)$/;
const SECONDS_PER_DAY = 86_400;

/**
 * A clock of the log in the manner of one of its cells (`pattern`): same separators, digits and offset.
 * `dateCode` as packed, `secondsOfDay` in UTC when `offsetS` is a number.
 */
export function writtenClock(
  pattern: string,
  offsetS: number,
  dateCode: number,
  secondsOfDay: number,
): string {
  const local = secondsOfDay + (Number.isNaN(offsetS) ? 0 : offsetS);
  const date = Number.isNaN(dateCode) ? "" : writtenDate(pattern, dateCode);
  const clock = CLOCK.exec(pattern);
  if (clock === null) return date;
  const joiner = date === "" ? "" : pattern.includes("T") ? "T" : " ";
  return date + joiner + writtenTime(clock, ((local % SECONDS_PER_DAY) + SECONDS_PER_DAY) % SECONDS_PER_DAY);
}

function writtenDate(pattern: string, dateCode: number): string {
  const { first, second, third } = dateFields(dateCode);
  const match = DATE.exec(pattern);
  if (match === null) return [first, padded(second, 2), padded(third, 2)].join("-");
  const [, a, separator, b, c] = match;
  return [padded(first, a!.length), padded(second, b!.length), padded(third, c!.length)].join(separator);
}

function writtenTime(match: RegExpExecArray, secondsOfDay: number): string {
  const [, hourText, , secondText, mark = ".", fraction = "", half = "", rest = ""] = match;
  const isTwoPart = secondText === undefined;
  const scale = 10 ** fraction.length;
  const ticks = Math.round(secondsOfDay * scale);
  const whole = Math.floor(ticks / scale);
  const tail = fraction === "" ? "" : mark + padded(ticks % scale, fraction.length);
  if (isTwoPart)
    return `${padded(Math.floor(whole / 60), hourText!.length)}:${padded(whole % 60, 2)}${tail}${rest}`;
  const hour = Math.floor(whole / 3600);
  const shown = half === "" ? hour : ((hour + 11) % 12) + 1;
  const clock = `${padded(shown, hourText!.length)}:${padded(Math.floor(whole / 60) % 60, 2)}:${padded(whole % 60, 2)}`;
  return `${clock}${tail}${half === "" ? "" : half.replace(/[AaPp]/, (letter) => halfLetter(letter, hour))}${rest}`;
}

function halfLetter(letter: string, hour: number): string {
  const text = hour >= 12 ? "p" : "a";
  return letter === letter.toUpperCase() ? text.toUpperCase() : text;
}

function padded(value: number, digits: number): string {
  return String(value).padStart(digits, "0");
}
