import { SECONDS_PER_DAY } from "../../base/quantity/index.ts";
import type { Column } from "./column.ts";
import type { DateOrder } from "./contract.ts";
import { dayOfCode, findDateOrder } from "./dateOrder.ts";
import { type FoundClock, shownStep } from "./foundClock.ts";
import { writtenClock } from "./writtenClock.ts";

/** True for a column of dates without a clock. */
export function isDateOnly(column: Column): boolean {
  return (
    column.dateCount > 0 &&
    column.dateCount === column.clockCount &&
    column.finished().every((value) => !(value > 0))
  );
}

/** True for a column in which most filled cells are clocks or date-times. */
export function isTextClock(column: Column): boolean {
  return column.clockCount > 0 && column.clockCount * 2 >= column.filledCount && !isDateOnly(column);
}

/** Reads clocks or date-times; `dates` is a date column beside a clock without a date, or null. */
export function textClock(
  column: Column,
  at: number,
  dates: { readonly column: Column; readonly at: number } | null,
  given: DateOrder | null,
): FoundClock {
  const pattern = column.firstClock!;
  const seconds = column.finished();
  const codes =
    column.dateCodes?.subarray(0, column.length) ??
    dates?.column.dateCodes?.subarray(0, column.length) ??
    null;
  const datePattern = column.dateCodes === null ? (dates?.column.firstClock?.text ?? "") : pattern.text;
  const order = codes === null ? null : findDateOrder(codes, given, datePattern);
  const days = order === null || codes === null ? null : daysOf(codes, order.order);
  const isOneDate = dates && days?.every((day) => Number.isNaN(day) || day === days[0]);
  const usedDays = isOneDate ? null : days;
  const isMinutes = column.twoPartCount === column.clockCount;
  const text = dates === null ? pattern.text : `${datePattern} ${pattern.text}`;
  return {
    timeS: sinceFirst(seconds, usedDays),
    clock: {
      kind: usedDays !== null ? "dateTime" : isMinutes ? "elapsed" : "timeOfDay",
      wrapS: usedDays !== null ? null : isMinutes ? 3600 : SECONDS_PER_DAY,
      resolutionS: Math.min(shownStep(seconds), fractionStep(pattern.text)),
      textOfRow: (row) =>
        isMinutes || Number.isNaN(seconds[row]!)
          ? null
          : writtenClock(text, pattern.offsetS, codes?.[row] ?? Number.NaN, seconds[row]!),
    },
    column: at,
    dateColumn: dates?.at ?? null,
    unit: codes !== null ? "date and clock" : isMinutes ? "min:s" : "clock",
    why: codes !== null ? "every filled cell is a date with a clock" : "every filled cell is a clock",
    ambiguousDate: order === null || order.isProven ? null : datePattern.slice(0, 10),
    unnamedStepS: null,
  };
}

function fractionStep(text: string): number {
  const fraction = /:\d{2}[.,](\d{1,6})/.exec(text)?.[1];
  return fraction === undefined ? 1 : 10 ** -fraction.length;
}

/** A date seldom changes: each distinct one is looked up once. */
function daysOf(codes: Float64Array, order: DateOrder): Float64Array {
  const known = new Map<number, number>();
  return codes.map((code) => {
    const day = known.get(code) ?? dayOfCode(code, order);
    known.set(code, day);
    return day;
  });
}

function sinceFirst(seconds: Float64Array, days: Float64Array | null): Float64Array {
  const first = seconds.findIndex(
    (value, row) => !Number.isNaN(value) && (days === null || !Number.isNaN(days[row]!)),
  );
  const firstSecond = seconds[first] ?? 0;
  const firstDay = days?.[first] ?? 0;
  return seconds.map((value, row) => {
    return days === null
      ? value - firstSecond
      : (days[row]! - firstDay) * SECONDS_PER_DAY + (value - firstSecond);
  });
}
