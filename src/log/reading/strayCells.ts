import type { Column } from "./column.ts";
import { isDateOnly, isTextClock } from "./textClock.ts";

/**
 * A column holds numbers or clocks: a few cells of the other kind ("24.8.88" or "0:05" among volts) are unreadable,
 * never seconds of the day taken for a value. `mayCountMinutes`: "59.8", then "1:00.2", is one count of seconds.
 */
export function dropStrayCells(
  column: Column,
  mayCountMinutes: boolean,
  lineOfRow: (row: number) => number,
): void {
  if (column.clockCount === 0 || column.numberCount === 0) return;
  const isClock = column.clockCount * 2 >= column.filledCount;
  const isMinutes = column.twoPartCount === column.clockCount;
  if (isClock && isDateOnly(column)) return;
  if (isMinutes && (isClock || mayCountMinutes)) return;
  column.dropWhere(isTextClock(column) ? "number" : "clock", lineOfRow);
}
