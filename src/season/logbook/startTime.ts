import type { DateOrder } from "../../log/reading/index.ts";

const TIME = /(?:^|[\sT_])(\d{1,2}):(\d{2})(?::(\d{2}))?/;
const YEAR_FIRST = /^\D?(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})(?!\d)/;
const YEAR_LAST = /^\D?(\d{1,2})([-/.])(\d{1,2})\2(\d{4})(?!\d)/;

/**
 * When a flight began, as a text that sorts: the log's own date and time, else the date given with its
 * time, else the date alone ("2026-06-14"); null when no day is known. No zone is converted.
 * @param startedAt the log's clock as written, or null
 * @param date YYYY-MM-DD as given, or null
 * @param dateOrder how 3/4/2026 is meant, where that was said
 */
export function startTime(
  startedAt: string | null,
  date: string | null,
  dateOrder: DateOrder | null,
): string | null {
  const day = (startedAt === null ? null : dayIn(startedAt, dateOrder)) ?? date;
  if (day === null) return null;
  const time = startedAt === null ? null : timeIn(startedAt);
  return time === null ? day : `${day}T${time}`;
}

/** Seconds since midnight by the log's clock, or null. */
export function secondsOfDay(startedAt: string | null): number | null {
  const time = startedAt === null ? null : timeIn(startedAt);
  if (time === null) return null;
  const [hours = 0, minutes = 0, seconds = 0] = time.split(":").map(Number);
  return hours * 3600 + minutes * 60 + seconds;
}

function timeIn(text: string): string | null {
  const found = TIME.exec(text);
  if (found === null) return null;
  return [found[1], found[2], found[3] ?? "00"].map((part) => (part ?? "").padStart(2, "0")).join(":");
}

function dayIn(text: string, dateOrder: DateOrder | null): string | null {
  const first = YEAR_FIRST.exec(text);
  if (first !== null) return dayOf(first[1], first[2], first[3]);
  const last = YEAR_LAST.exec(text);
  if (last === null) return null;
  const order = dateOrder ?? likelyOrder(last[2] ?? "", Number(last[1]), Number(last[3]));
  if (order === "dmy") return dayOf(last[4], last[3], last[1]);
  return order === "mdy" ? dayOf(last[4], last[1], last[3]) : null;
}

/** Dots are written day first (common practice, no published source); else only a number above 12 tells. */
function likelyOrder(separator: string, first: number, second: number): DateOrder | null {
  if (first > 12 || (separator === "." && second <= 12)) return "dmy";
  return second > 12 ? "mdy" : null;
}

function dayOf(year = "", month = "", day = ""): string | null {
  const [monthNumber, dayNumber] = [Number(month), Number(day)];
  if (monthNumber < 1 || monthNumber > 12 || dayNumber < 1 || dayNumber > 31) return null;
  return `${year}-${month.padStart(2, "0")}-${day.padStart(2, "0")}`;
}
