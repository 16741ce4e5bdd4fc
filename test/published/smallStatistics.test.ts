import { describe, expect, it } from "vitest";
import {
  hampel,
  mean,
  median,
  normalQuantile,
  quantile,
  sampleStandardDeviation,
  scaledMad,
  studentTQuantile,
} from "../../src/base/statistics/index.ts";

describe("NIST/SEMATECH e-Handbook of Statistical Methods", () => {
  it("7.2.6.2: the 90th percentile of 12 readings, method R7, is 95.1957", () => {
    const readings = [
      95.1772, 95.1567, 95.1937, 95.1959, 95.1442, 95.061, 95.1591, 95.1195, 95.1065, 95.0925, 95.199,
      95.1682,
    ];
    expect(quantile(readings, 0.9)).toBeCloseTo(95.19568, 8);
  });

  it("1.3.5.17.1: Grubbs statistic 2.4687 and its one-sided 5 % limit 2.032 (Tietjen and Moore)", () => {
    const readings = [199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57];
    const g = (245.57 - mean(readings)) / sampleStandardDeviation(readings);
    expect(g).toBeCloseTo(2.468765, 6);
    const n = readings.length;
    const t = studentTQuantile(1 - 0.05 / n, n - 2);
    expect(((n - 1) / Math.sqrt(n)) * Math.sqrt(t ** 2 / (n - 2 + t ** 2))).toBeCloseTo(2.031652, 6);
    // The same value by the modified z score (Iglewicz and Hoaglin 1993) stands 29.96 deviations out.
    expect((245.57 - median(readings)) / scaledMad(readings)).toBeCloseTo(29.9627, 1);
  });
});

describe("Leys and others, Journal of Experimental Social Psychology 49 (2013), 764", () => {
  const values = [1, 3, 3, 6, 8, 10, 10, 1000];

  it("median 7, scaled MAD 5.1891, limits at 3 of -8.57 and 22.57", () => {
    expect(median(values)).toBe(7);
    expect(scaledMad(values)).toBeCloseTo(5.1891, 4);
    expect(7 - 3 * scaledMad(values)).toBeCloseTo(-8.57, 2);
    expect(7 + 3 * scaledMad(values)).toBeCloseTo(22.57, 2);
  });
});

describe("Hampel identifier as R package pracma defines it", () => {
  const values = [10, 10.1, 9.9, 10.2, 10, 25, 10.1, 9.8, 10, 10.2, 9.9, 10.1, -3, 10, 10.1, 9.9];

  it("finds the values 5 and 12 of our own example and puts 10 in their place", () => {
    const found = hampel(values, 3, 3);
    expect(Array.from(found.isOutlier.keys()).filter((i) => found.isOutlier[i] === 1)).toEqual([5, 12]);
    expect([found.medians[5], found.medians[12]]).toEqual([10, 10]);
  });

  it("needs a floor where half of the window is equal", () => {
    const flat = [5, 5, 5, 5, 5.001, 5, 5, 5, 5];
    expect(hampel(flat, 3, 3).isOutlier[4]).toBe(1);
    expect(hampel(flat, 3, 3, 0.01).isOutlier[4]).toBe(0);
  });

  it("leaves the ends alone and refuses NaN", () => {
    expect(Array.from(hampel([99, 1, 1, 1, 1, 1, 99], 3).isOutlier)).toEqual([0, 0, 0, 0, 0, 0, 0]);
    expect(() => hampel([1, Number.NaN, 1], 1)).toThrow("NaN");
  });
});

describe("Abramowitz and Stegun, Handbook of Mathematical Functions (1964)", () => {
  it("table 26.5 and 26.10: normal and Student quantiles as printed", () => {
    expect(normalQuantile(0.975)).toBeCloseTo(1.95996, 5);
    expect(normalQuantile(0.995)).toBeCloseTo(2.57583, 5);
    expect(studentTQuantile(0.975, 1)).toBeCloseTo(12.706, 3);
    expect(studentTQuantile(0.975, 10)).toBeCloseTo(2.228, 3);
    expect(studentTQuantile(0.995, 30)).toBeCloseTo(2.75, 3);
  });
});
