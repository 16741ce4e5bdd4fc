import { describe, expect, it } from "vitest";
import { huberRegression } from "../../../src/base/statistics/index.ts";

describe("huberRegression", () => {
  const x = Array.from({ length: 41 }, (_, i) => i);
  const ones = x.map(() => 1);
  const noise = x.map((i) => 0.1 * Math.sin(12.9898 * i));
  const clean = x.map((i) => 3 + 0.5 * i + noise[i]!);

  it("keeps the line when a tenth of the points is wild", () => {
    const wild = clean.map((y, i) => (i % 10 === 7 ? y + 40 : y));
    const fit = huberRegression([ones, x], wild)!;
    expect(fit.converged).toBe(true);
    expect(fit.coefficients[1]).toBeCloseTo(0.5, 2);
    expect(Math.abs(fit.coefficients[0]! - 3)).toBeLessThan(0.1);
    expect(fit.weights[7]).toBeLessThan(0.01);
    expect(fit.weights[8]).toBe(1);
  });

  it("solves Huber's equations: the clipped residuals are orthogonal to every column", () => {
    const fit = huberRegression([ones, x], clean.map((y, i) => y + (i === 5 ? 3 : 0)))!; // biome-ignore format: one case
    const clipped = x.map((_, i) => fit.weights[i]! * fit.residuals[i]!);
    expect(Math.abs(clipped.reduce((sum, value) => sum + value, 0))).toBeLessThan(1e-6);
    expect(Math.abs(clipped.reduce((sum, value, i) => sum + value * i, 0))).toBeLessThan(1e-4);
  });

  it("leaves an exact line alone and needs data that fix it", () => {
    const fit = huberRegression([ones, x], x.map((i) => 2 * i - 1))!; // biome-ignore format: one case
    expect(fit.coefficients[1]).toBeCloseTo(2, 12);
    expect(fit.rounds).toBe(0);
    expect(huberRegression([ones, ones], clean)).toBeNull();
    expect(() => huberRegression([ones, x], clean.map(() => Number.NaN))).toThrow("NaN"); // biome-ignore format: one case
  });
});
