/** A stretch without a value, between two rows that hold one; in the unit of x. */
export interface Gap {
  readonly from: number;
  readonly to: number;
}

/** Places where two neighbouring values of `y` (NaN: none) are further apart in `x` than `longestStep`. */
export function gapsOf(
  x: ArrayLike<number>,
  y: ArrayLike<number>,
  range: { readonly first: number; readonly last: number },
  longestStep: number,
): Gap[] {
  const found: Gap[] = [];
  let before = Number.NaN;
  for (let row = range.first; row <= range.last; row++) {
    if (Number.isNaN(y[row] ?? Number.NaN)) continue;
    const at = x[row] ?? Number.NaN;
    if (at - before > longestStep) found.push({ from: before, to: at });
    before = at;
  }
  return found;
}

/** Splits rising rows wherever a gap lies between two of them. */
export function splitAtGaps(
  rows: readonly number[],
  x: ArrayLike<number>,
  gaps: readonly Gap[],
): readonly (readonly number[])[] {
  const pieces: number[][] = [];
  let next = 0;
  for (const row of rows) {
    const at = x[row] ?? Number.NaN;
    let isNewPiece = pieces.length === 0;
    for (; next < gaps.length && (gaps[next]?.to ?? 0) <= at; next++) isNewPiece = true;
    if (isNewPiece) pieces.push([]);
    pieces.at(-1)?.push(row);
  }
  return pieces;
}
