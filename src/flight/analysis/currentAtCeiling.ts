import type { Recording } from "../../log/recording/index.ts";
import type { RowRange } from "./segments.ts";
import { sumBasis } from "./sumBasis.ts";

/** Whether the current reads the end of its sensor's range somewhere in the rows: more may have flowed there. */
export function isAtCeiling(
  recording: Recording,
  amps: Float64Array,
  { firstRow, lastRow }: RowRange,
): boolean {
  const { ceilingA } = sumBasis(recording, amps);
  if (ceilingA === null) return false;
  const at = amps.indexOf(ceilingA, firstRow);
  return at >= 0 && at <= lastRow;
}
