import { describe, expect, it } from "vitest";
import { projectionFit } from "../../src/base/statistics/index.ts";
import { expectDigits } from "./digits.ts";

// NIST Statistical Reference Datasets, nonlinear regression (1999): y = b1 (1 - exp(-b2 x)), certified values.

/** Box, Hunter and Hunter, Statistics for Experimenters (1978), pages 483-487. */
const BOX_BOD = { x: [1, 2, 3, 5, 7, 10], y: [109, 149, 149, 191, 213, 224] };

/** Misra, D., dental research: monomolecular adsorption (1978). */
const MISRA_1A = {
  x: [77.6, 114.9, 141.1, 190.8, 239.9, 289.0, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760.0],
  y: [10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.4, 75.47, 81.78],
};

function fitRise(data: { x: number[]; y: number[] }, low: number, high: number) {
  const fit = projectionFit((tau) => [data.x.map((x) => -Math.expm1(-x / tau))], data.y, {
    low,
    high,
    steps: 60,
  })!;
  return { ...fit, b1: fit.linear.coefficients[0]!, b2: 1 / fit.parameter };
}

describe("exponential rise by variable projection, without a starting value", () => {
  it("agrees with BoxBOD, where common solvers fail from the first start", () => {
    const fit = fitRise(BOX_BOD, 0.05, 100);
    expectDigits(fit.b1, 213.80940889, 7);
    expectDigits(fit.b2, 0.54723748542, 7);
    expectDigits(fit.linear.residualSumOfSquares, 1168.0088766, 10);
    expect(fit.isAtEnd).toBe(false);
  });

  it("agrees with Misra1a", () => {
    const fit = fitRise(MISRA_1A, 100, 100_000);
    expectDigits(fit.b1, 238.94212918, 6);
    expectDigits(fit.b2, 5.5015643181e-4, 6);
    expectDigits(fit.linear.residualSumOfSquares, 0.12455138894, 9);
  });
});
