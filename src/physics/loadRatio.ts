import { coefficientFit } from "./coefficientFit.ts";
import { fitGroup, type PropellerShape, predictStaticPowerCoefficient } from "./staticPrediction.ts";

/** Load of one propeller over that of another at the same speed and air: CP D^5 over CP D^5. */
export interface LoadRatio {
  readonly value: number;
  /** 95 % interval of the ratio on the line of the kind: what such a step does on average. */
  readonly low: number;
  readonly high: number;
  /** The same for two single propellers, each with its own scatter about the line. */
  readonly lowOfTwo: number;
  readonly highOfTwo: number;
  /** Either shape lies outside what was measured of the kind. */
  readonly isExtrapolated: boolean;
}

const TWO_SIDED_95 = 1.96;

/**
 * How the static load changes from one propeller to another of the same kind and number of blades, by the line
 * log CP = a + b log(p/D) (+ c log D) over the UIUC static means. The family is that of the first.
 * @throws RangeError when a length is not positive
 */
export function loadRatio(from: PropellerShape, to: PropellerShape): LoadRatio {
  const one = predictStaticPowerCoefficient({ ...from, blades: 2 });
  const other = predictStaticPowerCoefficient({ ...to, blades: 2, family: from.family });
  const fit = coefficientFit(fitGroup(from.family), "power");
  const steps = [
    0,
    Math.log(to.pitchIn / to.diameterIn / (from.pitchIn / from.diameterIn)),
    Math.log(to.diameterIn / from.diameterIn),
  ].slice(0, fit.coefficients.length);
  const log = Math.log(other.value / one.value) + 5 * Math.log(to.diameterIn / from.diameterIn);
  const ofLine = fit.t * Math.sqrt(quadraticForm(steps, fit.covariance));
  const inside = (fit.t * fit.standardDeviation) / TWO_SIDED_95;
  const beyond = [one, other].map(({ relativeSd, isExtrapolated }) =>
    isExtrapolated ? Math.sqrt(Math.max(0, relativeSd ** 2 - inside ** 2)) : 0,
  );
  const ofKind = Math.hypot(ofLine, ...beyond.map((sd) => TWO_SIDED_95 * sd));
  const ofTwo = Math.max(ofKind, TWO_SIDED_95 * Math.hypot(one.relativeSd, other.relativeSd));
  return {
    value: Math.exp(log),
    low: Math.exp(log - ofKind),
    high: Math.exp(log + ofKind),
    lowOfTwo: Math.exp(log - ofTwo),
    highOfTwo: Math.exp(log + ofTwo),
    isExtrapolated: one.isExtrapolated || other.isExtrapolated,
  };
}

function quadraticForm(vector: readonly number[], matrix: readonly (readonly number[])[]): number {
  return vector.reduce(
    (sum, a, i) => sum + vector.reduce((inner, b, j) => inner + a * b * matrix[i]![j]!, 0),
    0,
  );
}
