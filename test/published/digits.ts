import { expect } from "vitest";

/** Number of digits in which two numbers agree: the log relative error of NIST's StRD pages. */
export function agreeingDigits(actual: number, certified: number): number {
  if (actual === certified) return 15;
  const scale = certified === 0 ? 1 : Math.abs(certified);
  return -Math.log10(Math.abs(actual - certified) / scale);
}

/** Fails with both numbers when they agree in fewer than `digits` significant digits. */
export function expectDigits(actual: number, certified: number, digits: number): void {
  const agreed = agreeingDigits(actual, certified);
  expect(agreed, `got ${actual}, certified ${certified}: ${agreed.toFixed(1)} digits`).toBeGreaterThanOrEqual(
    digits,
  );
}
