import { describe, expect, it } from "vitest";
import {
  boundsOf,
  correlatedSum,
  hampel,
  inQuadrature,
  leastSquares,
  linearRegression,
  mannKendall,
  mean,
  minimumOf,
  noncentralTCdf,
  noncentralTQuantile,
  normalCdf,
  normalDensity,
  normalQuantile,
  projectionFit,
  propagate,
  propagatedCovariance,
  quantile,
  RandomNumbers,
  rootOf,
  sampleStandardDeviation,
  selectInPlace,
  shiftTest,
  studentTCdf,
  studentTQuantile,
} from "../../../src/base/statistics/index.ts";
import { logGamma } from "../../../src/base/statistics/logGamma.ts";
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

describe("what is refused is named, with the value", () => {
  const bad = [1, Number.NaN];
  it.each<[string, () => unknown]>([
    ["hampel needs finite numbers", () => hampel(bad, 1)],
    ["leastSquares (columns) needs at least 1", () => leastSquares([], [1])],
    ["leastSquares (y) needs finite numbers", () => leastSquares([[1, 2]], bad)],
    [
      "leastSquares (column 1 and y) needs lists of the same length",
      () => leastSquares([[1, 2], [1]], [1, 2]),
    ],
    ["leastSquares (column 0) needs finite numbers", () => leastSquares([bad], [1, 2])],
    ["leastSquares (weights and y) needs lists", () => leastSquares([[1, 2]], [1, 2], [1])],
    ["leastSquares (weights) needs finite numbers", () => leastSquares([[1, 2]], [1, 2], bad)],
    ["mannKendall needs lists of the same length", () => mannKendall([1, 2], [1])],
    ["mannKendall needs at least 2 values", () => mannKendall([1], [1])],
    ["mannKendall (x) needs finite numbers", () => mannKendall(bad, [1, 2])],
    ["mannKendall (y) needs finite numbers", () => mannKendall([1, 2], bad)],
    ["mean needs at least 1 values", () => mean([])],
    ["mean needs finite numbers", () => mean(bad)],
    ["degrees of freedom must lie between 1 and", () => noncentralTCdf(1, 0.5, 0)],
    ["noncentral t: t must lie", () => noncentralTCdf(Number.NaN, 3, 0)],
    ["noncentral t: delta must lie", () => noncentralTCdf(1, 3, Number.POSITIVE_INFINITY)],
    ["the probability of a noncentral t quantile must lie", () => noncentralTQuantile(1, 3, 0)],
    ["the probability of a normal quantile must lie", () => normalQuantile(1)],
    [
      "the low end of a trial range must lie",
      () => projectionFit(() => [[1]], [1], { low: 2, high: 1, steps: 2 }),
    ],
    [
      "the number of grid steps must lie",
      () => projectionFit(() => [[1]], [1], { low: 1, high: 2, steps: 1 }),
    ],
    ["a rank must lie", () => selectInPlace(Float64Array.of(1, 2), 2)],
    ["inQuadrature needs finite numbers", () => inQuadrature(...bad)],
    ["correlatedSum needs finite numbers", () => correlatedSum(...bad)],
    ["boundsOf needs finite numbers", () => boundsOf(bad)],
    ["propagate needs lists of the same length", () => propagate(() => 0, [1], [1, 2])],
    ["propagate (inputs) needs finite numbers", () => propagate(() => 0, bad, [1, 2])],
    ["propagate (uncertainties) needs finite numbers", () => propagate(() => 0, [1, 2], bad)],
    [
      "propagatedCovariance needs lists of the same length: got 1 and 2",
      () => propagatedCovariance([1], [1, 2], [1, 2]),
    ],
    [
      "propagatedCovariance needs lists of the same length: got 2 and 1",
      () => propagatedCovariance([1, 2], [1, 2], [1]),
    ],
  ])("%s", (message, call) => expect(call).toThrow(message));
});

describe("distributions where they are known in closed form", () => {
  it("Student's t with 1 and 2 degrees of freedom", () => {
    for (const t of [-50, -3, -1, -0.2, 0.2, 1, 1.4, 1.5, 3, 50]) {
      expect(studentTCdf(t, 1)).toBeCloseTo(0.5 + Math.atan(t) / Math.PI, 13);
      expect(studentTCdf(t, 2)).toBeCloseTo(0.5 + t / (2 * Math.sqrt(2 + t * t)), 13);
    }
    for (const p of [1e-6, 0.001, 0.2, 0.4999, 0.5001, 0.8, 0.999, 1 - 1e-6]) {
      expect(studentTQuantile(p, 1) / Math.tan(Math.PI * (p - 0.5))).toBeCloseTo(1, 9);
      expect(studentTQuantile(p, 2) / ((2 * p - 1) * Math.sqrt(2 / (4 * p * (1 - p))))).toBeCloseTo(1, 9);
    }
    expect(() => studentTQuantile(1, 3)).toThrow("the probability of a t quantile");
  });

  it("the normal tails: far below zero they keep their digits", () => {
    // Mills' ratio for large z: phi(z)/z (1 - 1/z^2 + 3/z^4 - 15/z^6).
    for (const z of [12, 20, 37]) {
      const mills = (normalDensity(z) / z) * (1 - z ** -2 + 3 * z ** -4 - 15 * z ** -6 + 105 * z ** -8);
      expect(normalCdf(-z) / mills).toBeCloseTo(1, 6);
    }
    for (const p of [1e-300, 1e-20, 1e-7, 1e-6, 0.3, 0.5, 0.7, 1 - 1e-12]) {
      expect(normalCdf(normalQuantile(p)) / p).toBeCloseTo(1, 10);
      if (p > 1e-12) expect(normalQuantile(1 - p)).toBeCloseTo(-normalQuantile(p), 3);
    }
  });

  it("the noncentral t with 1 degree of freedom and at its sign", () => {
    // P(T <= 0) = Phi(-delta); and T(t, nu, delta) mirrors: P(T <= t; delta) = 1 - P(T <= -t; -delta).
    for (const delta of [-4, -0.5, 0, 2, 7]) {
      for (const nu of [1, 2, 5, 40]) {
        expect(noncentralTCdf(0, nu, delta)).toBeCloseTo(normalCdf(-delta), 11);
        for (const t of [-6, -1, 0.3, 2, 9]) {
          expect(noncentralTCdf(t, nu, delta)).toBeCloseTo(1 - noncentralTCdf(-t, nu, -delta), 10);
        }
      }
    }
    for (const p of [0.001, 0.05, 0.5, 0.95, 0.999]) {
      for (const delta of [-9, 0, 3, 30]) {
        expect(noncentralTCdf(noncentralTQuantile(p, 6, delta), 6, delta)).toBeCloseTo(p, 9);
      }
    }
  });

  it("the gamma function at whole and half numbers", () => {
    let factorial = 1;
    for (let n = 1; n < 20; n++) {
      expect(logGamma(n)).toBeCloseTo(Math.log(factorial), 11);
      factorial *= n;
    }
    expect(logGamma(0.5)).toBeCloseTo(Math.log(Math.PI) / 2, 12);
    expect(() => logGamma(0)).toThrow("logGamma: x must lie");
  });
});

describe("fits by their definitions", () => {
  it("R squared is about the mean with a column of ones, about zero without, weighted or not", () => {
    const x = [1, 2, 3, 4];
    const y = [2.1, 3.9, 6.2, 7.8];
    const ones = [1, 1, 1, 1];
    const squares = (values: readonly number[]) => values.reduce((sum, value) => sum + value * value, 0);
    const about = (centre: number) => squares(y.map((value) => value - centre));
    const through = leastSquares([x], y)!;
    expect(through.rSquared).toBeCloseTo(1 - squares([...through.residuals]) / about(0), 12);
    const line = leastSquares([ones, x], y)!;
    expect(line.rSquared).toBeCloseTo(1 - squares([...line.residuals]) / about(5), 12);
    const weights = [1, 3, 1, 2];
    const weighted = leastSquares([x, ones], y, weights)!;
    const centre = (2.1 + 3 * 3.9 + 6.2 + 2 * 7.8) / 7;
    const sum = (of: (at: number) => number) =>
      weights.reduce((all, weight, at) => all + weight * of(at) ** 2, 0);
    const explained = 1 - sum((at) => weighted.residuals[at]!) / sum((at) => y[at]! - centre);
    expect(weighted.rSquared).toBeCloseTo(explained, 12);
    const none = leastSquares([[0, 0, 0, 0]], y);
    expect(none).toBeNull();
    expect(leastSquares([ones, x], [1, 2, 3, 4], [1, 0, 0, 0])).toBeNull();
  });

  it("columns of very different size lose no digits", () => {
    const x = [1, 2, 3, 4, 5];
    const tiny = x.map((value) => 1e-150 * value);
    const huge = x.map((value) => 1e150 * value * value);
    const y = x.map((value) => 3 * value + 2 * value * value);
    const [a, b] = leastSquares([tiny, huge], y)!.coefficients;
    expect(a! * 1e-150).toBeCloseTo(3, 9);
    expect(b! * 1e150).toBeCloseTo(2, 9);
    const { covariance, standardErrors } = leastSquares([x.map(() => 1), x], [1.1, 1.9, 3.2, 3.9, 5.1])!;
    expect(covariance[0]![1]).toBeCloseTo(covariance[1]![0]!, 12);
    expect(standardErrors[0]).toBeCloseTo(Math.sqrt(covariance[0]![0]!), 12);
  });

  it("a fit by projection finds its valley at any place of the grid and says when it is an end", () => {
    const t = Array.from({ length: 30 }, (_, at) => at);
    const columns = (tau: number) => [t.map((at) => Math.exp(-at / tau))];
    for (const tau of [1.3, 4, 11, 31, 48]) {
      const y = t.map((at) => 7 * Math.exp(-at / tau));
      const fit = projectionFit(columns, y, { low: 1, high: 50, steps: 12 })!;
      expect(fit.parameter / tau).toBeCloseTo(1, 7);
      expect(fit.linear.coefficients[0]).toBeCloseTo(7, 6);
      expect(fit.grid).toHaveLength(13);
      expect(fit.grid[12]!.parameter).toBeCloseTo(50, 9);
    }
    const beyond = t.map((at) => 7 * Math.exp(-at / 90));
    expect(projectionFit(columns, beyond, { low: 1, high: 50, steps: 12 })!.isAtEnd).toBe(true);
    const rough = projectionFit(columns, t.map((at) => Math.exp(-at / 8)), { low: 1, high: 50, steps: 12, tolerance: 0.3 })!; // biome-ignore format: one case
    expect(Math.abs(rough.parameter / 8 - 1)).toBeGreaterThan(1e-4);
  });

  it("correlated parts add with their signs, each once", () => {
    expect(correlatedSum(1, 2, -5)).toBe(2);
    expect(correlatedSum(4)).toBe(4);
    expect(boundsOf([2, 2])).toEqual({ low: 2, high: 2 });
  });

  it("random orders of three values are alike (seed 5)", () => {
    const random = new RandomNumbers(5);
    const counts = new Map<string, number>();
    for (let trial = 0; trial < 6000; trial++) {
      const values = Float64Array.of(1, 2, 3);
      random.shuffle(values);
      counts.set(values.join(), (counts.get(values.join()) ?? 0) + 1);
    }
    expect(counts.size).toBe(6);
    // Binomial: 1000 +- 29.
    for (const count of counts.values()) expect(Math.abs(count - 1000)).toBeLessThan(120);
    const first = Array.from({ length: 40 }, (_, seed) => new RandomNumbers(seed).next());
    expect(new Set(first).size).toBe(40);
    const mean = first.reduce((sum, value) => sum + value, 0) / 40;
    // A mean of 40 uniform numbers: 0.5 +- 0.046.
    expect(Math.abs(mean - 0.5)).toBeLessThan(0.19);
  });
});
