import { describe, expect, it } from "vitest";
import { exactUpperTail, mannKendall, normalCdf, theilSen } from "../../src/base/statistics/index.ts";
import { expectDigits } from "./digits.ts";

// U.S. EPA, Statistical Analysis of Groundwater Monitoring Data at RCRA Facilities, Unified Guidance,
// EPA 530/R-09-007 (2009), examples 17-7 and 17-6, with the results of the R package EnvStats. Dates as printed.

const SODIUM = {
  x: [89.6, 90.1, 90.8, 91.1, 92.1, 93.1, 94.1, 95.6, 96.1, 96.3],
  y: [56, 53, 51, 55, 52, 60, 62, 59, 61, 63],
};
const SULFATE = {
  x: [
    89.6, 89.8, 90.1, 90.3, 90.6, 90.8, 91.1, 91.3, 91.6, 91.8, 92.1, 92.6, 93.1, 93.6, 94.1, 94.6, 95.1,
    95.6, 95.8, 96.1, 96.3, 96.6, 96.8,
  ],
  y: [
    480, 450, 490, 520, 485, 510, 510, 530, 510, 560, 560, 540, 590, 550, 600, 700, 570, 610, 650, 620, 830,
    720, 590,
  ],
};

describe("EPA example 17-7, sodium", () => {
  const test = mannKendall(SODIUM.x, SODIUM.y);
  const line = theilSen(SODIUM.x, SODIUM.y);

  it("gives S, its variance, z and tau", () => {
    expect([test.s, test.variance]).toEqual([25, 125]);
    expectDigits(test.z, 2.146625, 6);
    expectDigits(2 * normalCdf(-test.z), 0.03182313, 6);
    expectDigits(test.tau, 0.5555556, 6);
  });

  it("gives the slope, the intercept and the interpolated interval", () => {
    expectDigits(line.slope, 1.3333333, 7);
    expectDigits(line.intercept, -65.9666667, 8);
    expectDigits(line.low!, 0.3992083, 6);
    expectDigits(line.high!, 2.3333333, 7);
    expect(line.pairs).toBe(45);
  });
});

describe("EPA example 17-6, sulfate, with ties", () => {
  const test = mannKendall(SULFATE.x, SULFATE.y);
  const line = theilSen(SULFATE.x, SULFATE.y);

  it("gives S, its variance, z and tau", () => {
    expect([test.s, test.variance]).toEqual([194, 1428]);
    expectDigits(test.z, 5.107322, 6);
    expectDigits(2 * normalCdf(-test.z), 3.267574e-7, 6);
    expectDigits(test.tau, 0.7667984, 6);
    expect(test.isExact).toBe(false);
    expectDigits(test.risingP, 3.267574e-7 / 2, 6);
  });

  it("gives the slope, the intercept and the interval", () => {
    expectDigits(line.slope, 26.6666667, 8);
    expectDigits(line.intercept, -1909.3333333, 9);
    expectDigits(line.low!, 20, 9);
    expectDigits(line.high!, 35.71182, 6);
    expect(line.pairs).toBe(253);
  });
});

describe("exact Mann-Kendall tails", () => {
  // Counted over all orders; they match the usual printed small-sample tables (Kendall 1975, appendix table 1).
  it.each([
    [4, 4, 4 / 24],
    [4, 6, 1 / 24],
    [5, 6, 14 / 120],
    [5, 8, 5 / 120],
    [5, 10, 1 / 120],
    [6, 9, 49 / 720],
    [6, 11, 20 / 720],
    [6, 13, 6 / 720],
    [6, 15, 1 / 720],
    [7, 13, 174 / 5040],
    [7, 15, 76 / 5040],
    [7, 17, 27 / 5040],
    [7, 19, 7 / 5040],
    [7, 21, 1 / 5040],
    [8, 16, 1230 / 40320],
    [8, 18, 628 / 40320],
    [8, 20, 285 / 40320],
    [10, 21, 131635 / 3628800],
    [10, 23, 84592 / 3628800],
    [10, 25, 51909 / 3628800],
    [10, 27, 30239 / 3628800],
  ])("n = %i, S >= %i", (n, s, chance) => {
    expectDigits(exactUpperTail(n, s), chance, 12);
  });

  it("leave no two-sided 5 % verdict with four values", () => {
    const rising = mannKendall([1, 2, 3, 4], [1, 2, 3, 4]);
    expect(rising.isExact).toBe(true);
    expectDigits(2 * rising.risingP, 1 / 12, 12);
    expect(rising.fallingP).toBeCloseTo(1, 12);
    expect(theilSen([1, 2, 3, 4], [1, 2, 3, 4]).low).toBeNull();
  });
});

describe("Sen slope of a small example", () => {
  // Helsel and Hirsch, Statistical Methods in Water Resources: data from memory, results recomputed.
  it("shrugs off one wild value", () => {
    const line = theilSen([1, 2, 3, 4, 5, 6, 7], [1, 2, 3, 4, 5, 16, 7]);
    expect([line.slope, line.intercept]).toEqual([1, 0]);
    expect(mannKendall([1, 2, 3, 4, 5, 6, 7], [1, 2, 3, 4, 5, 16, 7]).s).toBe(19);
  });
});
