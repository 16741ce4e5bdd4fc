import { describe, expect, it } from "vitest";
import { incompleteBeta } from "../../../src/base/statistics/incompleteBeta.ts";
import {
  hampel,
  huberRegression,
  leastSquares,
  linearRegression,
  mannKendall,
  median,
  oneSidedPredictionFactor,
  oneSidedToleranceFactor,
  pooledSpread,
  scaledMad,
  studentTCdf,
  studentTQuantile,
  theilSen,
} from "../../../src/base/statistics/index.ts";
import { kendallS } from "../../../src/base/statistics/mannKendall.ts";

describe("incompleteBeta", () => {
  it("has its ends, its mirror and its closed forms", () => {
    expect([incompleteBeta(0, 2, 3), incompleteBeta(-1, 2, 3), incompleteBeta(1, 2, 3)]).toEqual([0, 0, 1]);
    for (const x of [0.03, 0.4, 0.5, 0.77, 0.99]) {
      for (const [a, b] of [
        [0.5, 4],
        [3, 2],
        [20, 0.5],
      ] as const) {
        // biome-ignore format: pairs
        expect(incompleteBeta(x, a, b)).toBeCloseTo(1 - incompleteBeta(1 - x, b, a), 13);
      }
      expect(incompleteBeta(x, 1, 7)).toBeCloseTo(1 - (1 - x) ** 7, 13);
      expect(incompleteBeta(x, 7, 1)).toBeCloseTo(x ** 7, 13);
    }
  });
});

describe("one-sided factors", () => {
  it("predict with t sqrt(1 + 1/n), the degrees of freedom being n - 1 unless they are pooled", () => {
    expect(oneSidedPredictionFactor(5, 0.95)).toBeCloseTo(studentTQuantile(0.95, 4) * Math.sqrt(1.2), 13);
    expect(oneSidedPredictionFactor(1, 0.95, 5)).toBeCloseTo(studentTQuantile(0.95, 5) * Math.SQRT2, 13);
    expect(() => oneSidedPredictionFactor(0.5, 0.95)).toThrow("a count must lie between 1 and");
    expect(() => oneSidedPredictionFactor(1, 0.95)).toThrow("degrees of freedom");
  });

  it("bound the median as Student's t bounds the mean", () => {
    for (const count of [2, 6, 30]) {
      const bound = studentTQuantile(0.95, count - 1) / Math.sqrt(count);
      expect(oneSidedToleranceFactor(count, 0.5, 0.95)).toBeCloseTo(bound, 10);
    }
  });

  it("rise with the coverage, and refuse what lies outside", () => {
    const factor = (coverage: number) => oneSidedToleranceFactor(8, coverage, 0.95, 20);
    expect(factor(0.9)).toBeGreaterThan(1.2816);
    expect(factor(0.99)).toBeGreaterThan(factor(0.9) + 2.3263 - 1.2816);
    expect(() => factor(0.49)).toThrow("coverage must lie between 0.5 and 0.9999: got 0.49");
    expect(() => oneSidedToleranceFactor(0, 0.9, 0.95)).toThrow("a count must lie");
  });

  it("pool no spread that rests on nothing", () => {
    const none = { standardDeviation: 3, degreesOfFreedom: 0 };
    expect(() => pooledSpread(none, none)).toThrow("pooled degrees of freedom must lie");
  });
});

describe("Student t at its edges", () => {
  it("is half at 0, keeps small tails, and passes NaN on", () => {
    expect(studentTCdf(0, 3)).toBe(0.5);
    expect(studentTCdf(Number.NaN, 3)).toBeNaN();
    expect(studentTCdf(-1e9, 1) * Math.PI * 1e9).toBeCloseTo(1, 9);
    expect(studentTQuantile(0.5, 3)).toBe(0);
    expect(studentTQuantile(0.75, 1)).toBeCloseTo(1, 12);
    expect(studentTQuantile(0.25, 1)).toBeCloseTo(-1, 12);
    expect(() => studentTQuantile(0, 3)).toThrow("the probability of a t quantile");
  });
});

describe("Theil-Sen at its edges", () => {
  it("has no interval from three points, and both ends from six", () => {
    expect(theilSen([1, 2, 3], [1, 2, 4])).toMatchObject({ slope: 1.5, low: null, high: null, pairs: 3 });
    const { low, high, slope, intercept } = theilSen([1, 2, 3, 4, 5, 6], [2.1, 3.9, 6.2, 7.8, 10.1, 12]);
    expect(slope).toBeCloseTo(2, 1);
    expect(low).toBeLessThan(slope);
    expect(high).toBeGreaterThan(slope);
    expect(intercept).toBeCloseTo((6.2 + 7.8) / 2 - slope * 3.5, 12);
  });

  it("leaves out pairs of one x, and interpolates its ends between the ranks", () => {
    const tied = theilSen([1, 1, 2, 3, 4, 5], [0, 1, 2, 3, 4, 5], 0.5);
    expect(tied.pairs).toBe(14);
    // Slopes of four points on a parabola: 3, 4, 5, 5, 6, 7; C = 0.6745 sqrt(26/3) = 1.9856.
    const { low, high } = theilSen([1, 2, 3, 4], [1, 4, 9, 16], 0.5);
    const reach = 0.6744897501960817 * Math.sqrt(26 / 3);
    expect(low).toBeCloseTo(4 + ((6 - reach) / 2 - 2) * 1, 9);
    expect(high).toBeCloseTo(5 + ((6 + reach) / 2 + 1 - 4) * 1, 9);
  });

  it("names what it refuses", () => {
    expect(() => theilSen([1, 2], [1])).toThrow("theilSen needs lists of the same length");
    expect(() => theilSen([1], [1])).toThrow("theilSen needs at least 2 values");
    expect(() => theilSen([1, Number.NaN], [1, 2])).toThrow("theilSen (x) needs finite numbers");
    expect(() => theilSen([1, 2], [1, Number.NaN])).toThrow("theilSen (y) needs finite numbers");
    expect(() => theilSen([1, 2], [1, 2], 0.4)).toThrow("the confidence of a slope must lie");
    expect(() => theilSen([2, 2], [1, 2])).toThrow("at least two different x: all are 2");
  });
});

describe("ranks and medians at their edges", () => {
  it("give Kendall's variance for two points and with ties", () => {
    expect(kendallS([1, 2], [1, 2])).toMatchObject({ s: 1, variance: 1 });
    expect(kendallS([1, 2, 3], [5, 5, 7]).variance).toBeCloseTo((3 * 2 * 11 - 2 * 1 * 9) / 18, 12);
    expect(() => mannKendall([1], [1])).toThrow("at least");
  });

  it("name what they refuse", () => {
    expect(() => median([1, Number.NaN])).toThrow("median needs finite numbers");
    expect(() => scaledMad([1, Number.NaN], 0)).toThrow("scaledMad needs finite numbers");
    expect(scaledMad([1, 2, 3, 50], 2)).toBeCloseTo(1.482602218505602, 12);
  });

  it("let Hampel's identifier judge only whole windows", () => {
    const values = [9, 1, 1, 2, 40, 2, 1, 1, 9];
    const { isOutlier, medians } = hampel(values, 2, 3, 0.1);
    expect([...isOutlier]).toEqual([0, 0, 0, 0, 1, 0, 0, 0, 0]);
    expect([...medians]).toEqual([9, 1, 2, 2, 2, 2, 2, 1, 9]);
    expect([...hampel([1, 1, 1.2, 1, 1], 2, 3, 0.1).isOutlier]).toEqual([0, 0, 0, 0, 0]);
    expect([...hampel([1, 1, 1.2, 1, 1], 2, 3).isOutlier]).toEqual([0, 0, 1, 0, 0]);
    expect(() => hampel(values, 0)).toThrow("the half window must lie");
    expect(() => hampel(values, 2, -1)).toThrow("the threshold must lie");
    expect(() => hampel(values, 2, 3, -1)).toThrow("the floor must lie");
  });
});

describe("fits at their edges", () => {
  it("explain all of a constant", () => {
    expect(linearRegression([1, 2, 3], [4, 4, 4])).toMatchObject({ slope: 0, rSquared: 1 });
    expect(leastSquares([[1, 1, 1]], [0, 0, 0])!.rSquared).toBe(1);
  });

  it("have no standard errors without degrees of freedom", () => {
    const fit = leastSquares([[1, 1], [0, 1]], [2, 5])!; // biome-ignore format: rows
    expect([...fit.standardErrors, fit.residualStandardDeviation, fit.degreesOfFreedom]).toEqual([
      0, 0, 0, 0,
    ]);
  });

  it("end at once on a line, and lose no digits to one wild point", () => {
    const x = [0, 1, 2, 3, 4, 5, 6];
    const ones = x.map(() => 1);
    expect(huberRegression([ones, x], x.map((each) => 3 + 2 * each))).toMatchObject({ rounds: 0, converged: true }); // biome-ignore format: one case
    expect(huberRegression([ones, ones], x)).toBeNull();
    const wild = huberRegression([ones, x], [3, 5.1, 6.9, 9.05, 10.95, 13, 90])!;
    expect(wild.coefficients[1]).toBeCloseTo(2, 0);
    expect(wild.weights[6]).toBeLessThan(0.1);
  });
});
