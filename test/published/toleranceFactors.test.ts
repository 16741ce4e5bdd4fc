import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { describe, expect, it } from "vitest";
import {
  noncentralTQuantile,
  normalQuantile,
  oneSidedPredictionFactor,
  oneSidedToleranceFactor,
} from "../../src/base/statistics/index.ts";
import { sharedFolder, withShared } from "../support/shared.ts";

/**
 * One-sided factors, n then coverage/confidence .90/.90, .95/.90, .99/.90, .90/.95, .95/.95, .99/.95, recomputed to six
 * decimals; all agree to three with Montgomery and Runger, Applied Statistics and Probability for Engineers, 7th edition
 * (2018), table XII (seen as quoted in a public test file).
 */
const FACTORS = [
  [2, 10.252714, 13.089742, 18.500078, 20.581468, 26.259674, 37.093581],
  [3, 4.258165, 5.311478, 7.340439, 6.155281, 7.6559, 10.55273],
  [4, 3.187844, 3.956565, 5.438234, 4.161933, 5.143875, 7.042363],
  [5, 2.742348, 3.399834, 4.665982, 3.406633, 4.202681, 5.741085],
  [6, 2.49369, 3.091878, 4.242533, 3.006257, 3.707684, 5.061989],
  [10, 2.065668, 2.568373, 3.531659, 2.35464, 2.910963, 3.981118],
  [20, 1.765206, 2.207779, 3.051543, 1.925991, 2.396002, 3.295157],
  [50, 1.559468, 1.965294, 2.734892, 1.645565, 2.064993, 2.862449],
] as const;

const COLUMNS = [
  [0.9, 0.9],
  [0.95, 0.9],
  [0.99, 0.9],
  [0.9, 0.95],
  [0.95, 0.95],
  [0.99, 0.95],
] as const;

describe("one-sided tolerance factors", () => {
  it.each(FACTORS)("agree for n = %i to six decimals", (count, ...published) => {
    published.forEach((value, i) => {
      const [coverage, confidence] = COLUMNS[i]!;
      expect(Math.abs(oneSidedToleranceFactor(count, coverage, confidence) - value)).toBeLessThan(6e-7);
    });
  });

  it("agree with NIST/SEMATECH e-Handbook 7.2.6.3: n = 43 and n = 6 at .90/.99", () => {
    expect(oneSidedToleranceFactor(43, 0.9, 0.99)).toBeCloseTo(1.874, 4);
    expect(oneSidedToleranceFactor(6, 0.9, 0.99)).toBeCloseTo(4.4111, 4);
    const delta = normalQuantile(0.9) * Math.sqrt(43);
    expect(delta).toBeCloseTo(8.4037, 4);
    expect(noncentralTQuantile(0.99, 42, delta)).toBeCloseTo(12.28834, 5);
  });

  it("agree with U.S. NRC document ML14031A495: n = 50 at .95/.95 is 2.065 (quoted)", () => {
    expect(oneSidedToleranceFactor(50, 0.95, 0.95)).toBeCloseTo(2.065, 3);
  });

  it("take degrees of freedom of their own, for a pooled spread", () => {
    const own = oneSidedToleranceFactor(4, 0.95, 0.95);
    expect(oneSidedToleranceFactor(4, 0.95, 0.95, 3)).toBe(own);
    expect(oneSidedToleranceFactor(4, 0.95, 0.95, 6)).toBeLessThan(own);
    expect(oneSidedToleranceFactor(1, 0.95, 0.95, 3)).toBeGreaterThan(own);
  });

  it.skipIf(sharedFolder() === null)(withShared("agree with all 306 stored factors"), () => {
    const file = resolve(sharedFolder()!, "values/tolerance-factors.csv");
    const rows = readFileSync(file, "utf8").trim().split("\n").slice(1);
    expect(rows.length).toBeGreaterThan(300);
    for (const row of rows) {
      const [count, coverage, confidence, exact] = row.split(",").map(Number);
      const own = oneSidedToleranceFactor(count!, coverage!, confidence!);
      expect(Math.abs(own / exact! - 1), row).toBeLessThan(1e-6);
    }
  });
});

describe("one-sided prediction factor", () => {
  it("is t sqrt(1 + 1/n): t(.95; 9) = 1.833113 (Abramowitz and Stegun, table 26.10: 1.833)", () => {
    expect(oneSidedPredictionFactor(10, 0.95)).toBeCloseTo(1.833113 * Math.sqrt(1.1), 6);
    expect(oneSidedPredictionFactor(10, 0.95, 12)).toBeLessThan(oneSidedPredictionFactor(10, 0.95));
  });
});
