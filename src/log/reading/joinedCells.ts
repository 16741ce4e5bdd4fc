/** A step of a column's values, seen against their range: small for a smooth series, large for torn digits. */
function roughness(values: readonly number[]): number {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  let travel = 0;
  values.forEach((value, index) => {
    low = Math.min(low, value);
    high = Math.max(high, value);
    if (index > 0) travel += Math.abs(value - values[index - 1]!);
  });
  return high > low ? travel / (high - low) / Math.max(1, values.length - 1) : 0;
}

const FRACTION = /^\d{1,9}$/;
/** Added where the digits after the comma are not always as many: loggers write a fixed number. */
const UNEVEN = 0.05;
/** Added for a whole number that never changes: more likely the ",0" of the column before it. */
const UNMOVED = 0.03;

/**
 * Which of `names` columns were cut in two by an unquoted decimal comma, the same in every row.
 * Of all patterns with the right cell count, the one whose columns run smoothest. Null if none fits.
 */
export function joinPattern(rows: readonly (readonly string[])[], names: number): readonly boolean[] | null {
  const width = rows[0]?.length ?? 0;
  const joinCount = width - names;
  if (joinCount < 1 || joinCount > names) return null;
  type Best = { readonly cost: number; readonly pattern: readonly boolean[] };
  let byJoins = new Map<number, Best>([[0, { cost: 0, pattern: [] }]]);
  for (let column = 0; column < names; column++) {
    const next = new Map<number, Best>();
    const offer = (joins: number, best: Best): void => {
      if (best.cost < (next.get(joins)?.cost ?? Number.POSITIVE_INFINITY)) next.set(joins, best);
    };
    for (const [joins, best] of byJoins) {
      const at = column + joins;
      offer(joins, { cost: best.cost + wholeCost(rows, at), pattern: [...best.pattern, false] });
      offer(joins + 1, { cost: best.cost + joinedCost(rows, at), pattern: [...best.pattern, true] });
    }
    byJoins = next;
  }
  const found = byJoins.get(joinCount);
  return found === undefined || !Number.isFinite(found.cost) ? null : found.pattern;
}

function wholeCost(rows: readonly (readonly string[])[], at: number): number {
  const values = rows.map((row) => Number(row[at]));
  if (values.some((value) => Number.isNaN(value))) return 0;
  return values.every((value) => value === values[0]) ? UNMOVED : roughness(values);
}

function joinedCost(rows: readonly (readonly string[])[], at: number): number {
  const lengths = new Set<number>();
  const values: number[] = [];
  for (const row of rows) {
    const fraction = row[at + 1] ?? "";
    if (!FRACTION.test(fraction) || !/^[+-]?\d+$/.test(row[at] ?? "")) return Number.POSITIVE_INFINITY;
    lengths.add(fraction.length);
    values.push(Number(`${row[at]}.${fraction}`));
  }
  return roughness(values) + (lengths.size > 1 ? UNEVEN * lengths.size : 0);
}

/** The cells of one row with the torn numbers put together again; as they are when their count does not fit. */
export function joinCells(cells: readonly string[], joins: readonly boolean[]): string[] {
  const expected = joins.length + joins.filter(Boolean).length;
  if (cells.length !== expected) return [...cells];
  let at = 0;
  return joins.map((isJoined) => {
    if (!isJoined) return cells[at++]!;
    at += 2;
    return `${cells[at - 2]!.trim()},${cells[at - 1]!.trim()}`;
  });
}
