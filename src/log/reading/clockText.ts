import { SECONDS_PER_DAY } from "../../base/quantity/index.ts";

/** A clock, a date or both, read from one cell; the order of the date's fields is decided for the whole column. */
export interface ClockReading {
  /** Seconds of the day, moved to UTC by the offset when one is written; 0 for a date alone. NaN: not a clock. */
  secondsOfDay: number;
  /** The three date fields packed by `packDate`; NaN when there is no date. */
  dateCode: number;
  hasClock: boolean;
  /** Only two clock fields ("12:30"): hours and minutes or minutes and seconds. */
  isTwoPart: boolean;
  /** Offset from UTC in seconds; NaN when none is written. */
  offsetS: number;
}

const DATE = /^(\d{1,4})([-/.])(\d{1,2})\2(\d{1,4})(?=$|[ T\t,])/;
const COMPACT_DATE = /^(\d{4})(\d{2})(\d{2})(?=[ T]\d{6}|[ T]\d{2}:)/;
const NAMED_DATE = /^(\d{1,2})[-/. ]?([A-Za-z]{3})[a-z]{0,6}[-/. ](\d{4}|\d{2})(?=$|[ T\t,])/;
const CLOCK =
  /^(\d{1,2}):(\d{2})(?::(\d{2}))?(?:[.,](\d{1,9})|(?<=:\d{2}:\d{2}):(\d{3})(?!\d))?(?: ?([AaPp])\.?[Mm]\.?)?/;
const COMPACT_CLOCK = /^(\d{2})(\d{2})(\d{2})(?:[.,](\d{1,9}))?/;
const OFFSET = /^ ?(?:(Z|z|UTC|GMT)|([+\-\u2212])(\d{2}):?(\d{2})?)$/;
const MONTHS = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];
const LONGEST_CLOCK = 40;

/** Packs three date fields, each 0..9999, as written. */
export function packDate(first: number, second: number, third: number): number {
  return (first * 10_000 + second) * 10_000 + third;
}

/** Reads clock, date or date-time (ISO 8601, RFC 3339 and the usual written forms); null for any other text. */
export function readClock(text: string): ClockReading | null {
  const code = text.charCodeAt(0);
  if (code < 0x30 || code > 0x39 || text.length > LONGEST_CLOCK || text.length < 4) return null;
  const date = leadingDate(text);
  if (date === null) return clockOnly(text);
  const rest = text.slice(date.length).replace(/^(?:T|[ \t,]{1,3})/, "");
  if (rest === "") {
    return { secondsOfDay: 0, dateCode: date.code, hasClock: false, isTwoPart: false, offsetS: Number.NaN };
  }
  const clock = clockOnly(rest) ?? compactClock(rest);
  return clock === null ? null : { ...clock, dateCode: date.code };
}

function leadingDate(text: string): { code: number; length: number } | null {
  const match = DATE.exec(text) ?? COMPACT_DATE.exec(text);
  if (match !== null) {
    const isCompact = match.length === 4;
    const fields = (isCompact ? [match[1], match[2], match[3]] : [match[1], match[3], match[4]]).map(Number);
    const [first, second, third] = fields as [number, number, number];
    if (match[1]!.length === 3 || !isDate(first, second, third)) return null;
    return { code: packDate(first, second, third), length: match[0].length };
  }
  const named = NAMED_DATE.exec(text);
  if (named === null) return null;
  const month = MONTHS.indexOf(named[2]!.toLowerCase()) + 1;
  const year = fullYear(Number(named[3]));
  const day = Number(named[1]);
  if (month === 0 || dayNumber(year, month, day) === null) return null;
  return { code: packDate(year, month, day), length: named[0].length };
}

/** True if at least one order of the fields is a day of the calendar. */
function isDate(first: number, second: number, third: number): boolean {
  if (first > 31) return dayNumber(first, second, third) !== null;
  const year = fullYear(third);
  return dayNumber(year, second, first) !== null || dayNumber(year, first, second) !== null;
}

export function fullYear(year: number): number {
  return year < 100 ? 2000 + year : year;
}

/** Days since 1970-01-01 of a Gregorian date; null if there is no such day. */
export function dayNumber(year: number, month: number, day: number): number | null {
  if (month < 1 || month > 12 || day < 1 || day > 31 || year < 1) return null;
  const date = new Date(0);
  date.setUTCFullYear(year, month - 1, day);
  return date.getUTCDate() === day ? date.getTime() / (SECONDS_PER_DAY * 1000) : null;
}

function clockOnly(text: string): ClockReading | null {
  const match = CLOCK.exec(text);
  if (match === null) return null;
  const isTwoPart = match[3] === undefined;
  const half = match[6]?.toLowerCase();
  const decimals = match[4] ?? match[5];
  const seconds = isTwoPart
    ? minutesAndSeconds(Number(match[1]), Number(match[2]), decimals)
    : secondsOfDay(halfDayHour(Number(match[1]), half), Number(match[2]), Number(match[3]), decimals);
  return finished(seconds, isTwoPart, text.slice(match[0].length));
}

function compactClock(text: string): ClockReading | null {
  const match = COMPACT_CLOCK.exec(text);
  if (match === null) return null;
  const seconds = secondsOfDay(Number(match[1]), Number(match[2]), Number(match[3]), match[4]);
  return finished(seconds, false, text.slice(match[0].length));
}

function finished(seconds: number, isTwoPart: boolean, rest: string): ClockReading | null {
  const offsetS = rest === "" ? Number.NaN : offset(rest);
  if (Number.isNaN(seconds) || offsetS === null) return null;
  const shift = Number.isNaN(offsetS) ? 0 : offsetS;
  return { secondsOfDay: seconds - shift, dateCode: Number.NaN, hasClock: true, isTwoPart, offsetS };
}

function offset(text: string): number | null {
  const match = OFFSET.exec(text);
  if (match === null) return null;
  if (match[1] !== undefined) return 0;
  const hours = Number(match[3]);
  const minutes = Number(match[4] ?? "0");
  if (hours > 23 || minutes > 59) return null;
  return (match[2] === "+" ? 1 : -1) * (hours * 3600 + minutes * 60);
}

/** Hour of a 12-hour clock as hour of the day; NaN for an hour that such a clock does not have. */
function halfDayHour(hour: number, half: string | undefined): number {
  if (half === undefined) return hour;
  if (hour < 1 || hour > 12) return Number.NaN;
  return (hour % 12) + (half === "p" ? 12 : 0);
}

/** RFC 3339 limits: hours 0-23; second 60 only as the leap second that ends an hour. */
function secondsOfDay(hour: number, minute: number, second: number, fraction: string | undefined): number {
  const isLeap = second === 60 && minute === 59;
  if (!(hour <= 23) || minute > 59 || (second > 59 && !isLeap)) return Number.NaN;
  return (hour * 60 + minute) * 60 + second + fractionOf(fraction);
}

function minutesAndSeconds(minutes: number, seconds: number, fraction: string | undefined): number {
  return seconds > 59 ? Number.NaN : minutes * 60 + seconds + fractionOf(fraction);
}

function fractionOf(digits: string | undefined): number {
  return digits === undefined ? 0 : Number(digits) / 10 ** digits.length;
}
