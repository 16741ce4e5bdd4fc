import { requireFinite, requireSameLength } from "./preconditions.ts";

/** Correlation coefficients, -1 to 1, square and symmetric with 1 on the diagonal. */
export type Correlation = readonly (readonly number[])[];

/** Independent parts: the root of the sum of squares. */
export function inQuadrature(...parts: readonly number[]): number {
  requireFinite(parts, "inQuadrature");
  return Math.hypot(...parts);
}

/** Fully correlated parts (one gain on every term): their plain sum, signs as the sensitivities have them. */
export function correlatedSum(...parts: readonly number[]): number {
  requireFinite(parts, "correlatedSum");
  return Math.abs(parts.reduce((sum, part) => sum + part, 0));
}

/** Smallest and largest of some numbers. @throws RangeError for an empty list and for NaN */
export function boundsOf(values: readonly number[]): { readonly low: number; readonly high: number } {
  requireFinite(values, "boundsOf");
  if (values.length === 0) throw new RangeError("boundsOf needs at least 1 value: got 0");
  return {
    low: values.reduce((least, value) => Math.min(least, value)),
    high: values.reduce((most, value) => Math.max(most, value)),
  };
}

export interface Propagated {
  readonly value: number;
  /** One standard uncertainty. */
  readonly uncertainty: number;
  /** Derivative of the result by each input. */
  readonly sensitivities: readonly number[];
}

/**
 * First-order propagation of uncertainty (JCGM 100:2008, GUM, equation 16): u^2 = c' V c, the derivatives c by central
 * differences one standard uncertainty wide. Without a correlation matrix the inputs are independent.
 * @param uncertainties one standard uncertainty per input, 0 or more
 * @throws RangeError for lists of unequal length and numbers that are not finite
 */
export function propagate(
  f: (inputs: readonly number[]) => number,
  inputs: readonly number[],
  uncertainties: readonly number[],
  correlation?: Correlation,
): Propagated {
  requireSameLength(inputs, uncertainties, "propagate");
  requireFinite(inputs, "propagate (inputs)");
  requireFinite(uncertainties, "propagate (uncertainties)");
  const sensitivities = inputs.map((_, i) => derivative(f, inputs, i, uncertainties[i]!));
  const variance = propagatedCovariance(sensitivities, sensitivities, uncertainties, correlation);
  return { value: f(inputs), uncertainty: Math.sqrt(Math.max(0, variance)), sensitivities };
}

/** Covariance of two results of the same inputs (GUM, equation H.9), from their sensitivities. */
export function propagatedCovariance(
  first: readonly number[],
  second: readonly number[],
  uncertainties: readonly number[],
  correlation?: Correlation,
): number {
  requireSameLength(first, second, "propagatedCovariance");
  requireSameLength(first, uncertainties, "propagatedCovariance");
  let sum = 0;
  for (let i = 0; i < first.length; i++) {
    for (let j = 0; j < second.length; j++) {
      const r = correlation === undefined ? (i === j ? 1 : 0) : correlation[i]![j]!;
      sum += first[i]! * second[j]! * r * uncertainties[i]! * uncertainties[j]!;
    }
  }
  return sum;
}

/**
 * Effective degrees of freedom of a sum of independent parts (Welch-Satterthwaite; GUM, equation G.2b):
 * u^4 / sum(u_i^4 / nu_i). Infinity when no part has finite degrees of freedom.
 */
export function effectiveDegreesOfFreedom(
  parts: readonly { readonly uncertainty: number; readonly degreesOfFreedom: number }[],
): number {
  const combined = Math.hypot(...parts.map((part) => part.uncertainty));
  const sum = parts.reduce((total, part) => total + part.uncertainty ** 4 / part.degreesOfFreedom, 0);
  return combined ** 4 / sum;
}

function derivative(
  f: (inputs: readonly number[]) => number,
  inputs: readonly number[],
  index: number,
  step: number,
): number {
  if (step === 0) return 0;
  const shifted = (by: number) => f(inputs.map((value, i) => (i === index ? value + by : value)));
  return (shifted(step / 2) - shifted(-step / 2)) / step;
}
