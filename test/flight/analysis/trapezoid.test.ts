import { describe, expect, test } from "vitest";
import { largestAround, trapezoidSum } from "../../../src/flight/analysis/trapezoid.ts";

function sumOf(timeS: readonly number[], amps: readonly number[], volts: readonly number[] | null = null) {
  const integrand = {
    timeS: Float64Array.from(timeS),
    amps: Float64Array.from(amps),
    volts: volts === null ? null : Float64Array.from(volts),
  };
  const rows = { firstRow: 0, lastRow: timeS.length - 1 };
  return { integrand, rows, sum: trapezoidSum(integrand, rows, 1000) };
}

describe("published trapezoid examples", () => {
  // MathWorks documentation of trapz, "Multiple numerical integrations", irregular spacing.
  const x = [1, 2.5, 7, 10];
  test.each([
    [[5.2, 7.7, 9.6, 13.2], 82.8],
    [[4.8, 7.0, 10.5, 14.5], 85.725],
    [[4.9, 6.5, 10.2, 13.8], 82.125],
  ])("%j over 1, 2.5, 7, 10 is %d", (y, area) => {
    expect(sumOf(x, y).sum.covered).toBeCloseTo(area, 10);
  });

  // MathWorks documentation of trapz: squares at unit spacing; a sine over half a period.
  test("1 4 9 16 25 is 42, and the sine is 1.9998", () => {
    expect(sumOf([0, 1, 2, 3, 4], [1, 4, 9, 16, 25]).sum.covered).toBe(42);
    const angles = Array.from({ length: 101 }, (_, i) => (i * Math.PI) / 100);
    expect(sumOf(angles, angles.map(Math.sin)).sum.covered).toBeCloseTo(1.9998, 4);
  });

  // numpy documentation of trapz: trapz([1, 2, 3], x=[4, 6, 8]) is 8.
  test("1 2 3 over 4, 6, 8 is 8", () => {
    expect(sumOf([4, 6, 8], [1, 2, 3]).sum.covered).toBe(8);
  });

  // Own example (no published coulomb count with irregular sampling was found): sums by hand.
  test("a short irregular log: 315 A s and, of the products, 7605 W s", () => {
    const timeS = [0, 1, 2, 4, 5, 9, 10];
    const amps = [0, 20, 40, 40, 60, 10, 0];
    const volts = [25.2, 24.9, 24.4, 24.3, 23.8, 24.6, 25];
    expect(sumOf(timeS, amps).sum.covered).toBe(315);
    expect(sumOf(timeS, amps, volts).sum.covered).toBeCloseTo(7605, 9);
  });
});

describe("the parts of a sum", () => {
  const timeS = [0, 1, 2, 3, 8, 9, 10];
  const amps = [10, 20, Number.NaN, 40, 20, 10, 10];

  test("a missing row is bridged, a pair beyond the limit is a gap", () => {
    const { integrand, rows } = sumOf(timeS, amps);
    const sum = trapezoidSum(integrand, rows, 2);
    expect(sum.covered).toBe(15 + 60 + 15 + 10);
    expect(sum.coveredS).toBe(5);
    expect(sum.gaps).toEqual([{ rowBefore: 3, rowAfter: 4, startS: 3, endS: 8, linearSum: 150 }]);
    expect(sum.firstS).toBe(0);
    expect(sum.lastS).toBe(10);
  });

  test("times cut pairs and gaps on the straight line", () => {
    const { integrand, rows } = sumOf(timeS, amps);
    const sum = trapezoidSum(integrand, rows, 2, 0.5, 5.5);
    expect(sum.covered).toBeCloseTo(8.75 + 60, 12);
    expect(sum.gaps).toMatchObject([{ startS: 3, endS: 5.5 }]);
    expect(sum.gaps[0]!.linearSum).toBeCloseTo((40 + 30) * 1.25, 12);
  });

  test("sampling variance is the sum of (change x step)^2 / 12", () => {
    const { sum } = sumOf([0, 1, 3], [0, 6, 0]);
    expect(sum.samplingVariance).toBeCloseTo((36 + 144) / 12, 12);
  });

  test("one ampere of offset is worth the covered seconds, or the integral of the volts", () => {
    expect(sumOf([0, 1, 3], [5, 6, 7]).sum.perAmpere).toBe(3);
    expect(sumOf([0, 1, 3], [5, 6, 7], [20, 22, 24]).sum.perAmpere).toBe(21 + 46);
  });

  test("the largest value around a gap is looked for within reach of its edges", () => {
    const { integrand, rows } = sumOf([0, 5, 10, 40, 45, 51], [90, 30, 20, 25, 28, 80]);
    const [gap] = trapezoidSum(integrand, rows, 10).gaps;
    expect(largestAround(integrand, gap!, 10)).toBe(90);
    expect(largestAround(integrand, gap!, 9)).toBe(30);
  });

  test("nothing to sum gives zero seconds, not NaN", () => {
    expect(sumOf([0], [5]).sum).toMatchObject({ covered: 0, coveredS: 0, gaps: [] });
    expect(sumOf([], []).sum).toMatchObject({ covered: 0, coveredS: 0, gaps: [] });
  });
});
