import { describe, expect, it } from "vitest";
import {
  leastSquares,
  linearRegression,
  mannKendall,
  minimumOf,
  normalCdf,
  quantile,
  rootOf,
  sampleStandardDeviation,
  shiftTest,
} from "../../../src/base/statistics/index.ts";
import { exactUpperTail, kendallS } from "../../../src/base/statistics/mannKendall.ts";

/** Every order of some values. */
function orders(values: readonly number[]): readonly (readonly number[])[] {
  if (values.length < 2) return [values];
  return values.flatMap((first, at) =>
    orders([...values.slice(0, at), ...values.slice(at + 1)]).map((rest) => [first, ...rest]),
  );
}

describe("Kendall's S over every order of the values", () => {
  const indices = [1, 2, 3, 4, 5, 6];
  const scores = (x: readonly number[], y: readonly number[]) => orders(y).map((each) => kendallS(x, each).s);

  it.each([
    ["without ties", indices, [1, 2, 3, 4, 5, 6]],
    ["with a pair in y", indices, [1, 2, 2, 4, 5, 6]],
    ["with a triple in y", indices, [1, 2, 2, 2, 5, 6]],
    ["with pairs in both", [1, 1, 3, 4, 5, 6], [1, 2, 2, 4, 5, 6]],
    ["with triples in both", [1, 1, 1, 4, 5, 6], [1, 2, 2, 2, 5, 6]],
    ["with a group of four and pairs", [1, 1, 1, 1, 5, 5], [1, 1, 3, 3, 5, 6]],
    ["of three with a pair", [1, 2, 3], [5, 5, 7]],
  ])("has the variance that is stated, %s", (_, x, y) => {
    const all = scores(x, y);
    const variance = all.reduce((sum, s) => sum + s * s, 0) / all.length;
    expect(kendallS(x, y).variance).toBeCloseTo(variance, 10);
    expect(kendallS(x, y).hasTies).toBe(new Set(x).size < x.length || new Set(y).size < y.length);
  });

  it("has the tails that are stated", () => {
    const all = scores(indices, indices);
    for (const s of [-15, -7, -1, 1, 5, 11, 15, 17]) {
      const share = all.filter((each) => each >= s).length / all.length;
      expect(exactUpperTail(6, s), String(s)).toBeCloseTo(share, 12);
    }
    expect(mannKendall([1, 2], [1, 2])).toMatchObject({ risingP: 0.5, fallingP: 1, tau: 1, isExact: true });
  });

  it("counts minus nothing and nothing as equal", () => {
    expect(kendallS([1, 2, 3], [0, -0, 5])).toMatchObject({ s: 2, hasTies: true });
  });

  it("is put on the normal scale with the continuity correction where ties or length forbid counting", () => {
    const x = Array.from({ length: 10 }, (_, at) => at);
    const y = [1, 1, 3, 2, 4, 5, 5, 7, 6, 8];
    const test = mannKendall(x, y);
    const sigma = Math.sqrt(test.variance);
    expect(test).toMatchObject({ s: 39, isExact: false });
    expect(test.z).toBeCloseTo((39 - 1) / sigma, 12);
    expect(test.risingP).toBeCloseTo(1 - normalCdf((39 - 1) / sigma), 12);
    expect(test.fallingP).toBeCloseTo(normalCdf((39 + 1) / sigma), 12);
    expect(test.tau).toBeCloseTo(39 / 45, 12);
    const down = mannKendall(x, y.map((value) => -value)); // biome-ignore format: one case
    expect(down.z).toBeCloseTo(-test.z, 12);
  });

  it("is counted up to 60 values, and 61 agree with it", () => {
    const line = (n: number) => Array.from({ length: n }, (_, at) => at);
    const shaken = (n: number) => line(n).map((at) => at + 40 * Math.sin(3 * at));
    const [counted, approximated] = [60, 61].map((n) => mannKendall(line(n), shaken(n)));
    expect([counted!.isExact, approximated!.isExact]).toEqual([true, false]);
    const { s, variance } = counted!;
    expect(Math.abs(counted!.risingP - normalCdf(-(s - 1) / Math.sqrt(variance)))).toBeLessThan(1e-3);
  });

  it("of values that never vary is no trend", () => {
    expect(mannKendall([1, 2, 3], [4, 4, 4])).toMatchObject({
      s: 0,
      z: 0,
      variance: 0,
      risingP: 1,
      fallingP: 1,
    });
  });
});

describe("the best split of a series", () => {
  /** By the definition: Student's t of the two means, over every split with two values or more on each side. */
  function splitByT(values: readonly number[]): number {
    const t = (k: number) => {
      const [before, after] = [values.slice(0, k), values.slice(k)];
      const mean = (list: readonly number[]) => list.reduce((sum, value) => sum + value, 0) / list.length;
      const squares = (list: readonly number[]) =>
        list.reduce((sum, value) => sum + (value - mean(list)) ** 2, 0);
      const pooled = (squares(before) + squares(after)) / (values.length - 2);
      return (mean(after) - mean(before)) / Math.sqrt(pooled * (1 / before.length + 1 / after.length));
    };
    const splits = Array.from({ length: values.length - 3 }, (_, at) => at + 2);
    return splits.reduce((best, k) => (t(k) > t(best) ? k : best));
  }

  it.each([
    [[1, 2, 1.5, 1.2, 9, 8.5]],
    [[1, 2, 8, 9, 8.8, 9.3, 8.1]],
    [[0, 0.1, 5, 0.2, 0.1, 5.2, 6]],
    [[3, 1, 4, 1, 5, 9, 2, 6]],
    [[1, 1.1, 0.9, 1, 2]],
    [[5, 1, 2, 6]],
  ])("of %j is that of the largest t", (values) => {
    expect(shiftTest(values, "up", 1, 10)!.splitAfter).toBe(splitByT(values));
    expect(shiftTest(values.map((value) => -value), "down", 1, 10)!.splitAfter).toBe(splitByT(values)); // biome-ignore format: one case
  });

  it("of a few values has the chance that counting gives, ties within rounding counted", () => {
    const values = [0.1, 0.2, 0.3, 0.4, 1.1];
    const all = orders(values).map((each) => shiftTest(each, "up", 1, 1)!);
    const statistic = ({ shift, splitAfter: k }: (typeof all)[number]) =>
      shift * Math.sqrt((k * (5 - k)) / 5);
    const own = shiftTest(values, "up", 7, 20_000)!;
    const share = all.filter((each) => statistic(each) >= statistic(own) - 1e-9).length / all.length;
    expect(Math.abs(own.p - share)).toBeLessThan(4 * Math.sqrt((share * (1 - share)) / 20_000));
  });

  it("is named in its refusals", () => {
    expect(() => shiftTest([1, 2, 3, Number.NaN], "up", 1)).toThrow("shiftTest needs finite numbers");
    expect(() => shiftTest([1, 2, 3, 4], "up", 1, 0)).toThrow("the number of permutations must lie");
  });
});

describe("the search for a minimum", () => {
  /** Each step keeps 0.618 of the bracket: 44 of them leave a billionth, two calls begin, four end. */
  const CALLS = 2 + Math.ceil(Math.log(1e-9) / Math.log((Math.sqrt(5) - 1) / 2)) + 4;
  const calls = (f: (x: number) => number, low: number, high: number, tolerance?: number) => {
    let count = 0;
    const found = minimumOf(
      (x) => {
        count++;
        return f(x);
      },
      low,
      high,
      tolerance,
    );
    return { ...found, count };
  };

  it("ends when the bracket is a billionth of its ends, or as narrow as it is told", () => {
    expect(calls((x) => (x - 0.3) ** 2, 0, 1).count).toBe(CALLS);
    expect(calls((x) => (x + 0.3) ** 2, -3, 1).count).toBe(CALLS);
    expect(calls((x) => (x - 0.3) ** 2, 0, 1, 0.5).count).toBe(2 + 2 + 4);
    expect(calls((x) => (x - 0.3) ** 2, 0, 1, 0).count).toBe(2 + 300 + 4);
  });

  it("gives the smallest value it met, or an end", () => {
    expect(calls((x) => x, 2, 5)).toMatchObject({ at: 2, value: 2 });
    expect(calls((x) => -x, 2, 5)).toMatchObject({ at: 5, value: -5 });
    expect(calls(() => 7, 2, 5).value).toBe(7);
    expect(calls((x) => Math.abs(x - 3.7), 2, 5).at).toBeCloseTo(3.7, 8);
    expect(calls((x) => (x - 1e6) ** 2, 0, 4e6).at).toBeCloseTo(1e6, 0);
  });

  it("refuses a bracket from high to low", () => {
    expect(() => minimumOf((x) => x, 1, 0)).toThrow("the low end of a bracket must lie");
    expect(minimumOf((x) => x, 2, 2)).toEqual({ at: 2, value: 2 });
  });
});

describe("the search for a root", () => {
  /** Brent's own measure: calls of the function, beside the 40 that halving would need for 12 digits. */
  it.each<[string, (x: number) => number, number, number, number, number]>([
    ["x^3 - 2x - 5", (x) => x ** 3 - 2 * x - 5, 2, 3, 2.0945514815423265, 9],
    ["e^-x - x", (x) => Math.exp(-x) - x, 0, 1, 0.5671432904097838, 9],
    ["ln x", (x) => Math.log(x), 0.1, 5, 1, 12],
    ["sin x, from high to low", (x) => Math.sin(x), 4, 2.5, Math.PI, 9],
    ["atan(x - 1), steep ends", (x) => Math.atan(x - 1), -20, 30, 1, 15],
    ["1/x - 0.01", (x) => 1 / x - 0.01, 1, 900, 100, 17],
  ])("%s takes few calls", (_, f, low, high, root, most) => {
    let count = 0;
    const found = rootOf(
      (x) => {
        count++;
        return f(x);
      },
      low,
      high,
    );
    expect(found! / root).toBeCloseTo(1, 11);
    expect(count).toBeLessThanOrEqual(most);
  });

  it("never takes more than halving three times over, whatever the function", () => {
    let count = 0;
    const steep = (x: number) => {
      count++;
      return x < 0.123456789 ? -1e-12 : 1e12 * (x - 0.1234567);
    };
    expect(rootOf(steep, 0, 1)).toBeCloseTo(0.123456789, 9);
    expect(count).toBeLessThan(3 * 40);
  });
});

describe("sums of squares, lines and quantiles by their definitions", () => {
  it("the sample standard deviation of numbers far from zero", () => {
    const far = [4, 7, 13, 16].map((value) => 1e9 + value);
    // Mean 10, squares 36 + 9 + 9 + 36 over 3.
    expect(sampleStandardDeviation(far)).toBe(Math.sqrt(30));
    expect(() => sampleStandardDeviation([1])).toThrow("sampleStandardDeviation needs at least 2 values");
  });

  it("a line's errors, by hand", () => {
    // y = 1 + 2x with residuals 1, -1, -1, 1: slope and intercept stay, s^2 = 4/2, Sxx = 5.
    const fit = linearRegression([0, 1, 2, 3], [2, 2, 4, 8]);
    expect(fit.slope).toBeCloseTo(2, 12);
    expect(fit.intercept).toBeCloseTo(1, 12);
    expect(fit.residualSumOfSquares).toBeCloseTo(4, 12);
    expect(fit.residualStandardDeviation).toBeCloseTo(Math.SQRT2, 12);
    expect(fit.slopeStandardError).toBeCloseTo(Math.sqrt(2 / 5), 12);
    expect(fit.interceptStandardError).toBeCloseTo(Math.sqrt(2 * (1 / 4 + 1.5 ** 2 / 5)), 12);
    expect(fit.rSquared).toBeCloseTo(1 - 4 / 24, 12);
    expect(() => linearRegression([1, 2], [1])).toThrow("linearRegression needs lists of the same length");
    expect(() => linearRegression([1], [1])).toThrow("linearRegression needs at least 2 values");
    expect(() => linearRegression([3, 3], [1, 2])).toThrow("all 2 are 3");
  });

  it("least squares with weights, by hand", () => {
    // Weight 2 is the row twice.
    const rows = [1, 2, 4, 4];
    const twice = leastSquares([[1, 1, 1, 1, 1], [0, 1, 2, 2, 3]], [1, 2, 4, 4, 4])!; // biome-ignore format: rows
    const weighted = leastSquares([[1, 1, 1, 1], [0, 1, 2, 3]], rows, [1, 1, 2, 1])!; // biome-ignore format: rows
    for (const at of [0, 1]) expect(weighted.coefficients[at]).toBeCloseTo(twice.coefficients[at]!, 12);
    expect(weighted.residualSumOfSquares).toBeCloseTo(twice.residualSumOfSquares, 12);
    expect(weighted.rSquared).toBeCloseTo(twice.rSquared, 12);
    expect(() => leastSquares([[1, 2]], [1, 2], [1, -1])).toThrow("weight 1 is -1");
  });

  it("quantiles of many values, in any order, are those of the sorted ones", () => {
    const kinds = {
      falling: (at: number) => -at,
      equal: () => 5,
      "two levels": (at: number) => at % 2,
      wild: (at: number) => (at * 7919) % 10_007,
      saw: (at: number) => at % 97,
    };
    for (const [kind, valueAt] of Object.entries(kinds)) {
      for (const count of [1, 2, 3, 4, 50, 600, 601, 9000]) {
        const values = Float64Array.from({ length: count }, (_, at) => valueAt(at));
        const sorted = values.slice().sort();
        for (const share of [0, 0.1, 0.25, 0.5, 0.9, 1]) {
          const position = (count - 1) * share;
          const below = Math.floor(position);
          const above = sorted[Math.min(count - 1, below + 1)]!;
          const expected = sorted[below]! + (position - below) * (above - sorted[below]!);
          expect(quantile(values, share), `${kind}, ${count} values, ${share}`).toBeCloseTo(expected, 9);
        }
      }
    }
    expect(() => quantile([], 0.5)).toThrow("quantile needs at least 1 values");
    expect(() => quantile([1], 1.5)).toThrow("the share of a quantile must lie");
    expect(() => quantile([Number.NaN], 0.5)).toThrow("quantile needs finite numbers");
  });
});
