import { logGamma } from "./logGamma.ts";

const TINY = 1e-300;
const CONVERGED = 1e-16;
const MOST_TERMS = 10_000;

/**
 * Regularised incomplete beta function I_x(a, b), 0 <= x <= 1, a and b > 0, by the continued fraction of
 * NIST DLMF 8.17.22 (evaluated by Lentz's method), on the side where it converges fast.
 */
export function incompleteBeta(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  const logFront = a * Math.log(x) + b * Math.log1p(-x) + logGamma(a + b) - logGamma(a) - logGamma(b);
  const front = Math.exp(logFront);
  if (x < (a + 1) / (a + b + 2)) return (front / a) * fraction(x, a, b);
  return 1 - (front / b) * fraction(1 - x, b, a);
}

function fraction(x: number, a: number, b: number): number {
  let c = 1;
  let d = 1 / notZero(1 - ((a + b) * x) / (a + 1));
  let value = d;
  for (let m = 1; m < MOST_TERMS; m++) {
    for (const term of [evenTerm(m, x, a, b), oddTerm(m, x, a, b)]) {
      d = 1 / notZero(1 + term * d);
      c = notZero(1 + term / c);
      value *= d * c;
    }
    if (Math.abs(d * c - 1) < CONVERGED) break;
  }
  return value;
}

function evenTerm(m: number, x: number, a: number, b: number): number {
  return (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
}

function oddTerm(m: number, x: number, a: number, b: number): number {
  return (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
}

function notZero(value: number): number {
  return Math.abs(value) < TINY ? TINY : value;
}
