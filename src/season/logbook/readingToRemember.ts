import type { RememberedReading } from "../../aircraft/index.ts";
import type { KeptReading } from "./entry.ts";

/** What was answered about logs of this header, earlier answers included; null without a new answer. */
export function readingToRemember(
  headerSignature: string,
  readings: readonly RememberedReading[],
  { columns, units, rateHz, decimalMark, dateOrder }: KeptReading,
): RememberedReading | null {
  const isAnswer =
    Object.keys({ ...columns, ...units }).length > 0 ||
    [rateHz, decimalMark, dateOrder].some((one) => one !== null);
  if (!isAnswer) return null;
  const before = readings.find((one) => one.headerSignature === headerSignature);
  return {
    headerSignature,
    columns: { ...before?.columns, ...columns },
    units: { ...before?.units, ...units },
    rateHz: rateHz ?? before?.rateHz ?? null,
    decimalMark: decimalMark ?? before?.decimalMark ?? null,
    dateOrder: dateOrder ?? before?.dateOrder ?? null,
  };
}
