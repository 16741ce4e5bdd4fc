import { describe, expect, it } from "vitest";
import {
  boundsOf,
  correlatedSum,
  effectiveDegreesOfFreedom,
  inQuadrature,
  minimumOf,
  projectionFit,
  propagate,
  rootOf,
} from "../../../src/base/statistics/index.ts";

describe("rootOf", () => {
  it("finds roots of smooth, flat and kinked functions", () => {
    expect(rootOf((x) => x * x - 2, 0, 2)).toBeCloseTo(Math.SQRT2, 11);
    expect(rootOf((x) => Math.cos(x) - x, 0, 1)).toBeCloseTo(0.7390851332151607, 11);
    expect(rootOf((x) => (x - 1) ** 9, 0, 3.7, 1e-9)).toBeCloseTo(1, 1);
    expect(rootOf((x) => (x < 0.3 ? -1 : 1), 0, 1, 1e-9)).toBeCloseTo(0.3, 8);
    expect(rootOf((x) => x - 1e-9, -1, 1, 1e-16)).toBeCloseTo(1e-9, 15);
  });

  it("takes an end that is the root, and is null without a change of sign or with NaN", () => {
    expect(rootOf((x) => x, 0, 5)).toBe(0);
    expect(rootOf((x) => x - 5, 0, 5)).toBe(5);
    expect(rootOf((x) => x * x + 1, -1, 1)).toBeNull();
    expect(rootOf(() => Number.NaN, 0, 1)).toBeNull();
    expect(rootOf((x) => (x > 0.2 && x < 0.8 ? Number.NaN : x - 0.5), 0, 1)).toBeNull();
  });

  it("needs few calls for a smooth function", () => {
    let calls = 0;
    rootOf((x) => {
      calls++;
      return Math.exp(x) - 3;
    }, 0, 2); // biome-ignore format: one case
    expect(calls).toBeLessThan(13);
  });
});

describe("minimumOf", () => {
  it("finds a minimum inside and at an end", () => {
    expect(minimumOf((x) => (x - 0.3) ** 2, 0, 1).at).toBeCloseTo(0.3, 7);
    expect(minimumOf((x) => x, 2, 5).at).toBeCloseTo(2, 7);
    expect(minimumOf((x) => -x, 2, 5).at).toBeCloseTo(5, 7);
    expect(() => minimumOf(() => Number.NaN, 0, 1)).toThrow("NaN");
    expect(() => minimumOf((x) => x, 1, 0)).toThrow("got 1");
  });
});

describe("projectionFit", () => {
  const x = Array.from({ length: 20 }, (_, i) => i);

  it("says when the range does not hold the answer, and is null when nothing is fixed", () => {
    const y = x.map((t) => 5 * Math.exp(-t / 8));
    const columns = (tau: number) => [x.map((t) => Math.exp(-t / tau))];
    expect(projectionFit(columns, y, { low: 1, high: 100, steps: 20 })!.parameter).toBeCloseTo(8, 6);
    expect(projectionFit(columns, y, { low: 20, high: 100, steps: 20 })!.isAtEnd).toBe(true);
    expect(projectionFit(() => [x.map(() => 0)], y, { low: 1, high: 9, steps: 4 })).toBeNull();
    expect(() => projectionFit(columns, y, { low: 0, high: 9, steps: 4 })).toThrow("got 0");
  });
});

describe("uncertainty", () => {
  it("adds independent parts as squares and one gain on all as a plain sum", () => {
    expect(inQuadrature(3, 4)).toBe(5);
    expect(correlatedSum(3, 4)).toBe(7);
    expect(correlatedSum(3, -4)).toBe(1);
    expect(boundsOf([3, -1, 2])).toEqual({ low: -1, high: 3 });
  });

  it("meets in between through a correlation matrix", () => {
    const sum = (inputs: readonly number[]) => inputs[0]! + inputs[1]!;
    const u = (r: number) => propagate(sum, [10, 20], [3, 4], [[1, r], [r, 1]]).uncertainty; // biome-ignore format: one case
    expect(u(0)).toBeCloseTo(5, 9);
    expect(u(1)).toBeCloseTo(7, 9);
    expect(u(-1)).toBeCloseTo(1, 6);
    expect(propagate(sum, [10, 20], [0, 4]).sensitivities).toEqual([0, 1]);
  });

  it("refuses NaN and empty lists", () => {
    expect(() => inQuadrature(1, Number.NaN)).toThrow("NaN");
    expect(() => boundsOf([])).toThrow("got 0");
    expect(() => boundsOf([1, Number.NaN])).toThrow("NaN");
    expect(() => propagate((inputs) => inputs[0]!, [Number.NaN], [1])).toThrow("NaN");
    expect(effectiveDegreesOfFreedom([{ uncertainty: 2, degreesOfFreedom: Number.POSITIVE_INFINITY }])).toBe(
      Number.POSITIVE_INFINITY,
    );
  });
});
