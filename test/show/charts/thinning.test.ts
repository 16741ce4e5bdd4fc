import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { thinnedRows } from "../../../src/show/charts/index.ts";

const SEED = 20260614;

// Worked example of M4 in the documentation of Apache IoTDB, "M4" function (after Jugel et al. 2014,
// PVLDB 7(10)): windows of 25 from 0, kept points (1,5)(10,30)(20,20) | (25,8)(30,40)(45,30) | (52,8)(54,18).
const T = [1, 2, 5, 8, 10, 20, 25, 27, 30, 33, 35, 40, 45, 52, 54];
const V = [5, 15, 10, 8, 30, 20, 8, 20, 40, 9, 10, 20, 30, 8, 18];

describe("thinnedRows", () => {
  it("gives the published example", () => {
    const rows = thinnedRows(T, V, { first: 0, last: 14 }, { fromX: 0, toX: 75, columns: 3 });
    expect(rows.map((row) => [T[row], V[row]])).toEqual([
      [1, 5],
      [10, 30],
      [20, 20],
      [25, 8],
      [30, 40],
      [45, 30],
      [52, 8],
      [54, 18],
    ]);
  });

  it("skips rows without a value and rows outside the window", () => {
    const y = [1, Number.NaN, 3, 4, 5];
    expect(thinnedRows([0, 1, 2, 3, 4], y, { first: 0, last: 4 }, { fromX: 1, toX: 3, columns: 10 })).toEqual(
      [2, 3],
    );
  });

  it("puts the right edge into the last column", () => {
    expect(
      thinnedRows([0, 9, 10], [1, 2, 3], { first: 0, last: 2 }, { fromX: 0, toX: 10, columns: 2 }),
    ).toEqual([0, 1, 2]);
  });

  it(`keeps first, last, lowest and highest of every column, at most four (seed ${SEED})`, () => {
    const values = fc.array(
      fc.oneof(fc.double({ min: -100, max: 100, noNaN: true }), fc.constant(Number.NaN)),
      { minLength: 1, maxLength: 400 },
    );
    fc.assert(
      fc.property(values, fc.integer({ min: 1, max: 30 }), (y, columns) => {
        const x = y.map((_, row) => row);
        const toX = Math.max(1, y.length - 1);
        const rows = thinnedRows(x, y, { first: 0, last: y.length - 1 }, { fromX: 0, toX, columns });
        expect(rows).toEqual([...new Set(rows)].sort((a, b) => a - b));
        for (let column = 0; column < columns; column++) {
          const inside = x.filter(
            (at) =>
              !Number.isNaN(y[at]) && Math.min(columns - 1, Math.floor(at / (toX / columns))) === column,
          );
          const kept = rows.filter((row) => inside.includes(row));
          expect(kept.length).toBeLessThanOrEqual(4);
          if (inside.length === 0) continue;
          const numbers = inside.map((row) => y[row] ?? 0);
          const keptNumbers = kept.map((row) => y[row] ?? 0);
          expect([kept[0], kept.at(-1)]).toEqual([inside[0], inside.at(-1)]);
          expect([Math.min(...keptNumbers), Math.max(...keptNumbers)]).toEqual([
            Math.min(...numbers),
            Math.max(...numbers),
          ]);
        }
      }),
      { seed: SEED, numRuns: 200 },
    );
  });

  it("keeps a one-sample peak of 500 000 rows", () => {
    const y = new Float64Array(500_000).fill(1);
    y[333_333] = 9;
    const x = Float64Array.from(y, (_, row) => row / 50);
    const rows = thinnedRows(x, y, { first: 0, last: 499_999 }, { fromX: 0, toX: 9999.98, columns: 800 });
    expect(rows).toContain(333_333);
    expect(rows.length).toBeLessThanOrEqual(3200);
  });
});
