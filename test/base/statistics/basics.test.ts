import fc from "fast-check";
import * as reference from "simple-statistics";
import { describe, expect, it } from "vitest";
import {
  leastSquares,
  linearRegression,
  mean,
  median,
  quantile,
  quantileInPlace,
  sampleStandardDeviation,
  scaledMad,
  selectInPlace,
} from "../../../src/base/statistics/index.ts";

const VALUES = [3.2, -1, 7.5, 7.5, 0, 12, 4.4, -8.1, 2];

describe("against simple-statistics", () => {
  it("gives the same mean, median, standard deviation and median absolute deviation", () => {
    for (const values of [VALUES, Float64Array.from(VALUES), VALUES.slice(0, 8)]) {
      const plain = Array.from(values);
      expect(mean(values)).toBeCloseTo(reference.mean(plain), 14);
      expect(median(values)).toBe(reference.median(plain));
      expect(sampleStandardDeviation(values)).toBeCloseTo(reference.sampleStandardDeviation(plain), 13);
      expect(scaledMad(values)).toBeCloseTo(1.482602218505602 * reference.medianAbsoluteDeviation(plain), 13);
    }
  });
});

describe("quantile", () => {
  it("interpolates linearly between order statistics (type 7)", () => {
    expect(quantile([1, 2, 3, 6], 0.25)).toBe(1.75);
    expect(quantile([6, 3, 2, 1], 0.5)).toBe(2.5);
    expect(quantile([5], 0.3)).toBe(5);
    expect(quantile([4, 9, 2], 0)).toBe(2);
    expect(quantile([4, 9, 2], 1)).toBe(9);
  });

  it("agrees with sorting for 5000 values with many ties", () => {
    const values = Float64Array.from({ length: 5000 }, (_, i) => (i * 7919) % 97);
    const sorted = Float64Array.from(values).sort();
    for (const rank of [0, 1, 17, 2499, 2500, 4998, 4999]) {
      expect(selectInPlace(Float64Array.from(values), rank)).toBe(sorted[rank]);
    }
    expect(quantileInPlace(Float64Array.from(values), 0.5)).toBe((sorted[2499]! + sorted[2500]!) / 2);
  });

  it("agrees with sorting for every rank of lists with ties, in any order, and parts the values about it", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -5, max: 30 }), { minLength: 1, maxLength: 80 }), (values) => {
        const sorted = Float64Array.from(values).sort();
        sorted.forEach((value, rank) => {
          const left = Float64Array.from(values);
          expect(selectInPlace(left, rank)).toBe(value);
          expect(left.subarray(0, rank).every((one) => one <= value)).toBe(true);
          expect(left.subarray(rank).every((one) => one >= value)).toBe(true);
        });
      }),
      { seed: 7, numRuns: 200 },
    );
  });

  it("refuses NaN and shows it, where the library gives 4 without complaint", () => {
    expect(reference.quantile([5, Number.NaN, 1, 3], 0.5)).not.toBeNaN();
    expect(() => quantile([5, Number.NaN, 1, 3], 0.5)).toThrow("value 1 of 4 is NaN");
    expect(() => median([1, Number.POSITIVE_INFINITY])).toThrow("Infinity");
    expect(() => quantile([1, 2], Number.NaN)).toThrow("got NaN");
    expect(() => quantile([1, 2], 1.01)).toThrow("got 1.01");
    expect(() => median([])).toThrow("got 0");
  });
});

describe("mean and standard deviation", () => {
  it("keep their digits beside a large offset", () => {
    const values = [1e9 + 4, 1e9 + 7, 1e9 + 13, 1e9 + 16];
    expect(mean(values)).toBe(1e9 + 10);
    expect(sampleStandardDeviation(values)).toBeCloseTo(Math.sqrt(30), 12);
  });

  it("refuse what they cannot answer", () => {
    expect(() => mean([])).toThrow("at least 1");
    expect(() => sampleStandardDeviation([1])).toThrow("at least 2");
    expect(() => mean([1, Number.NaN])).toThrow("NaN");
  });
});

describe("linearRegression", () => {
  it("keeps a slope over epoch milliseconds", () => {
    const startMs = 1_780_000_000_000;
    for (const rows of [600, 6000]) {
      const x = Array.from({ length: rows }, (_, i) => startMs + 100 * i);
      const y = x.map((_, i) => 25 - 2e-6 * 100 * i);
      const fit = linearRegression(x, y);
      expect(Math.abs(fit.slope / -2e-6 - 1)).toBeLessThan(1e-9);
      expect(fit.meanY + fit.slope * (x[0]! - fit.meanX)).toBeCloseTo(25, 9);
    }
  });

  it("refuses points that share one x, where the library gives NaN", () => {
    expect(reference.linearRegression([[3, 1], [3, 2]]).m).toBeNaN(); // biome-ignore format: one case
    expect(() => linearRegression([3, 3, 3], [1, 2, 3])).toThrow("all 3 are 3");
    expect(() => linearRegression([], [])).toThrow("at least 2");
    expect(() => linearRegression([1, 2], [1])).toThrow("2 and 1");
    expect(() => linearRegression([1, Number.NaN], [1, 2])).toThrow("NaN");
  });

  it("gives no scatter from two points", () => {
    const fit = linearRegression([1, 3], [2, 8]);
    expect([fit.slope, fit.intercept, fit.slopeStandardError, fit.degreesOfFreedom]).toEqual([3, -1, 0, 0]);
  });
});

describe("leastSquares", () => {
  it("is null when the data do not fix the coefficients", () => {
    const ones = [1, 1, 1, 1];
    expect(leastSquares([ones, [2, 2, 2, 2]], [1, 2, 3, 4])).toBeNull();
    expect(leastSquares([ones, [1, 2, 3, 4], [3, 5, 7, 9]], [1, 2, 3, 5])).toBeNull();
    expect(leastSquares([[1], [2]], [3])).toBeNull();
    expect(leastSquares([[0, 0, 0]], [1, 2, 3])).toBeNull();
    expect(leastSquares([ones, [1, 2, 3, 4]], [1, 2, 3, 4], [1, 0, 0, 0])).toBeNull();
  });

  it("weights as repeated rows do", () => {
    const twice = leastSquares([[1, 1, 1, 1], [0, 1, 2, 2]], [1, 2, 4, 4])!; // biome-ignore format: rows
    const weighted = leastSquares([[1, 1, 1], [0, 1, 2]], [1, 2, 4], [1, 1, 2])!; // biome-ignore format: rows
    expect(weighted.coefficients[0]).toBeCloseTo(twice.coefficients[0]!, 13);
    expect(weighted.coefficients[1]).toBeCloseTo(twice.coefficients[1]!, 13);
    expect(weighted.residualSumOfSquares).toBeCloseTo(twice.residualSumOfSquares, 13);
    expect(weighted.rSquared).toBeCloseTo(twice.rSquared, 12);
  });

  it("leaves out a row of weight 0", () => {
    const all = leastSquares([[1, 1, 1], [0, 1, 2]], [1, 2, 4])!; // biome-ignore format: rows
    const out = leastSquares([[1, 1, 1, 1], [0, 1, 2, 9]], [1, 2, 4, -50], [1, 1, 1, 0])!; // biome-ignore format: rows
    expect(out.coefficients[1]).toBeCloseTo(all.coefficients[1]!, 13);
    expect(out.residualStandardDeviation).toBeCloseTo(all.residualStandardDeviation, 13);
    expect(out.degreesOfFreedom).toBe(1);
  });

  it("refuses NaN, unequal lengths and negative weights", () => {
    expect(() => leastSquares([[1, Number.NaN]], [1, 2])).toThrow("NaN");
    expect(() => leastSquares([[1, 2, 3]], [1, 2])).toThrow("3 and 2");
    expect(() => leastSquares([[1, 2]], [1, 2], [1, -1])).toThrow("-1");
    expect(() => leastSquares([], [1, 2])).toThrow("at least 1");
  });
});
