import { linearRegression, mean } from "../../base/statistics/index.ts";

/** Fewest points on either side of a step. */
const LEAST_SIDE = 2;
/** A creeping change is called a step only where the step leaves this share of the line's scatter. */
const CLEARLY_BETTER = 0.5;

/** Whether a changed series is more like a line or like one step, and where the step is (points before it). */
export function shapeOf(
  raisedBy: "trend" | "shift",
  x: readonly number[],
  values: readonly number[],
): { readonly kind: "trend" | "shift"; readonly splitAfter: number } {
  const count = values.length;
  const line = linearRegression(x, values);
  const ofLine = sumOfSquares(values, (index) => line.intercept + line.slope * (x[index] ?? 0));
  let splitAfter = LEAST_SIDE;
  let ofStep = Number.POSITIVE_INFINITY;
  for (let split = LEAST_SIDE; split <= count - LEAST_SIDE; split += 1) {
    const [before, after] = [mean(values.slice(0, split)), mean(values.slice(split))];
    const sum = sumOfSquares(values, (index) => (index < split ? before : after));
    if (sum < ofStep) [ofStep, splitAfter] = [sum, split];
  }
  // The step has one parameter more: its place.
  const stepOverLine = ofStep / Math.max(1, count - 3) / (ofLine / Math.max(1, count - 2));
  const limit = raisedBy === "trend" ? CLEARLY_BETTER : 1;
  return { kind: stepOverLine < limit ? "shift" : "trend", splitAfter };
}

function sumOfSquares(values: readonly number[], expected: (index: number) => number): number {
  return values.reduce((sum, value, index) => sum + (value - expected(index)) ** 2, 0);
}
