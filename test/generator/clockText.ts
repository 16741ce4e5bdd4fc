import type { ClockStyle, StartClock } from "./logStyle.ts";

const two = (value: number) => String(value).padStart(2, "0");
const three = (value: number) => String(value).padStart(3, "0");

interface Parts {
  readonly year: number;
  readonly month: number;
  readonly day: number;
  readonly hour: number;
  readonly minute: number;
  readonly second: number;
  readonly milli: number;
}

/** Milliseconds of the pilot's own clock, as if it stood at Greenwich. */
function localMilliseconds(start: StartClock, elapsedS: number): number {
  return Date.parse(`${start.date}T${start.clock}.000Z`) + Math.round(1000 * elapsedS);
}

function partsOf(milliseconds: number): Parts {
  const date = new Date(milliseconds);
  return {
    year: date.getUTCFullYear(),
    month: date.getUTCMonth() + 1,
    day: date.getUTCDate(),
    hour: date.getUTCHours(),
    minute: date.getUTCMinutes(),
    second: date.getUTCSeconds(),
    milli: date.getUTCMilliseconds(),
  };
}

function offsetText(minutes: number): string {
  if (minutes === 0) return "Z";
  const size = Math.abs(minutes);
  return `${minutes < 0 ? "-" : "+"}${two(Math.floor(size / 60))}:${two(size % 60)}`;
}

/** The cells that say when a row was written: one, or two for date and clock apart. */
export function clockCells(
  style: ClockStyle,
  elapsedS: number,
  start: StartClock,
  decimalMark: "." | ",",
): readonly string[] {
  if (style === "seconds") return [elapsedS.toFixed(2).replace(".", decimalMark)];
  if (style === "milliseconds") return [String(Math.round(1000 * elapsedS))];
  const local = localMilliseconds(start, elapsedS);
  if (style === "epochMilliseconds") return [String(local - 60_000 * start.offsetMinutes)];
  const { year, month, day, hour, minute, second, milli } = partsOf(local);
  const clock = `${two(hour)}:${two(minute)}:${two(second)}`;
  const date = `${year}-${two(month)}-${two(day)}`;
  if (style === "wholeSecondClock") return [clock];
  const fraction = `${clock}${decimalMark}${three(milli)}`;
  if (style === "clockFraction") return [fraction];
  if (style === "dateAndClock") return [date, fraction];
  if (style === "dottedDateTime") return [`${two(day)}.${two(month)}.${year} ${fraction}`];
  return [`${date}T${fraction}${offsetText(start.offsetMinutes)}`];
}
