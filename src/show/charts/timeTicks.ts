import { bisector } from "./d3.ts";

/** Steps a person counts time in, seconds. */
const STEPS_S = [
  0.1, 0.2, 0.5, 1, 2, 5, 10, 15, 30, 60, 120, 300, 600, 900, 1800, 3600, 7200, 14_400, 28_800,
];
const stepAtLeast = bisector((step: number) => step).left;

/** The shortest round step that gives at most `most` ticks over a span of `spanS` seconds. */
export function timeStepS(spanS: number, most: number): number {
  const index = stepAtLeast(STEPS_S, spanS / most);
  return STEPS_S[Math.min(index, STEPS_S.length - 1)] ?? 1;
}

/** Ticks at multiples of a round step inside fromS..toS (both included), at most about `most`. */
export function timeTicks(fromS: number, toS: number, most: number): number[] {
  const stepS = timeStepS(toS - fromS, most);
  const found: number[] = [];
  for (let count = Math.ceil(fromS / stepS - 1e-9); count * stepS <= toS + 1e-9; count++) {
    found.push(Number((count * stepS).toFixed(3)));
  }
  return found;
}
