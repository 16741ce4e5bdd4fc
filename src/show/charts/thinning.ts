/**
 * Rows that draw the same line as all rows: of each pixel column the first, the last, the lowest and
 * the highest (M4: Jugel, Jerzak, Hackenbroich and Markl 2014, PVLDB 7(10)). Column boundaries must be
 * pixel boundaries for that to hold.
 *
 * `x` rises; rows whose `y` is NaN are skipped. Columns are `columns` equal parts of fromX..toX, each
 * closed on the left; toX itself falls into the last. Rows `first`..`last` (both included) outside
 * fromX..toX are skipped. Returns row numbers in rising order, each once.
 */
export function thinnedRows(
  x: ArrayLike<number>,
  y: ArrayLike<number>,
  range: { readonly first: number; readonly last: number },
  window: { readonly fromX: number; readonly toX: number; readonly columns: number },
): number[] {
  const kept: number[] = [];
  const { fromX, toX, columns } = window;
  const perColumn = (toX - fromX) / columns;
  let column = -1;
  let firstRow = -1;
  let lastRow = -1;
  let lowestRow = -1;
  let highestRow = -1;
  for (let row = range.first; row <= range.last; row++) {
    const value = y[row] ?? Number.NaN;
    const at = x[row] ?? Number.NaN;
    if (Number.isNaN(value) || !(at >= fromX && at <= toX)) continue;
    const rowColumn = Math.min(columns - 1, Math.floor((at - fromX) / perColumn));
    if (rowColumn !== column) {
      keepColumn(kept, firstRow, lowestRow, highestRow, lastRow);
      column = rowColumn;
      firstRow = lowestRow = highestRow = row;
    } else {
      if (value < (y[lowestRow] ?? 0)) lowestRow = row;
      if (value > (y[highestRow] ?? 0)) highestRow = row;
    }
    lastRow = row;
  }
  keepColumn(kept, firstRow, lowestRow, highestRow, lastRow);
  return kept;
}

function keepColumn(kept: number[], first: number, lowest: number, highest: number, last: number): void {
  if (first < 0) return;
  const inner = lowest < highest ? [lowest, highest] : [highest, lowest];
  for (const row of [first, ...inner, last]) if (row > (kept.at(-1) ?? -1)) kept.push(row);
}
