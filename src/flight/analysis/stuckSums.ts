import type { StuckStretch } from "../../log/recording/index.ts";
import type { RowRange } from "./segments.ts";
import { type Integrand, type SumGap, trapezoidSum } from "./trapezoid.ts";

/** What the stretches in which the current sensor sticks add to a sum over `range`, each cut to it. */
export function stuckSums(
  integrand: Integrand,
  { firstRow, lastRow, startS, endS }: RowRange & { readonly startS?: number; readonly endS?: number },
  limitS: number,
  stretches: readonly StuckStretch[],
): readonly SumGap[] {
  return stretches.flatMap((stretch) => {
    const rows = heldRows(integrand, {
      firstRow: Math.max(firstRow, stretch.firstRow),
      lastRow: Math.min(lastRow, stretch.lastRow),
    });
    const sum = trapezoidSum(integrand, rows, limitS, startS, endS);
    if (!(sum.coveredS > 0)) return [];
    return [
      {
        rowBefore: rows.firstRow,
        rowAfter: rows.lastRow,
        startS: sum.firstS,
        endS: sum.lastS,
        linearSum: sum.covered,
      },
    ];
  });
}

/** The rows without those at either end that lack a channel of the sum. */
function heldRows({ amps, volts }: Integrand, { firstRow, lastRow }: RowRange): RowRange {
  const lacks = (row: number) => Number.isNaN(amps[row]! * (volts === null ? 1 : volts[row]!));
  let first = firstRow;
  let last = lastRow;
  while (first < last && lacks(first)) first++;
  while (last > first && lacks(last)) last--;
  return { firstRow: first, lastRow: last };
}
