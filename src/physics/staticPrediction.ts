import {
  type CoefficientName,
  coefficientFit,
  diameterMatters,
  type FitGroup,
  predictLog,
} from "./coefficientFit.ts";
import { familyNotKnown, outsideMeasured, scaledForBlades } from "./sentences.ts";
import { PROPELLER_KINDS } from "./staticMeans.ts";

/** What is known of a propeller. Lengths in inches, as the trade gives them. */
export interface PropellerShape {
  readonly diameterIn: number;
  readonly pitchIn: number;
  readonly blades: number;
  /** One of PROPELLER_KINDS; anything else counts as not known. */
  readonly family: string | null;
}

/** A coefficient nobody measured, with a 95 % interval for this one propeller. */
export interface PredictedCoefficient {
  readonly value: number;
  readonly low: number;
  readonly high: number;
  /** Half the width of the interval in the natural logarithm, over 1.96: one standard deviation, relative. */
  readonly relativeSd: number;
  readonly group: FitGroup;
  /** The shape lies outside what was measured of its kind. */
  readonly isExtrapolated: boolean;
  /** What widens the interval, in words; empty inside the table. */
  readonly remarks: readonly string[];
}

const TWO_SIDED_95 = 1.96;
/** Outside the pitches measured the line's own slope is trusted to half of itself (one sd): our choice. */
const SLOPE_DOUBT = 0.5;
/** Outside the diameters measured: the change per logarithm of diameter seen in thin electric propellers. */
const DIAMETER_DOUBT = 0.4;
/**
 * Coefficients grow with the number of blades to this power, half-width of a 95 % interval beside it: one more
 * blade counts as about one inch more of diameter (common practice, no published source).
 */
const BLADE_POWER = 0.75;
const BLADE_POWER_HALF_WIDTH = 0.25;

/**
 * Static power coefficient of a propeller nobody measured, from its kind, pitch over diameter (and diameter).
 * Left out one by one, 114 of the 116 measured propellers fall inside; median half-width 21 %.
 * @throws RangeError when diameter, pitch or blades are not positive
 */
export function predictStaticPowerCoefficient(shape: PropellerShape): PredictedCoefficient {
  return predict(shape, "power");
}

/** Static thrust coefficient likewise (112 of 116, 20 %): an estimate, for a thrust shown with its spread. */
export function predictStaticThrustCoefficient(shape: PropellerShape): PredictedCoefficient {
  return predict(shape, "thrust");
}

/** The group of the table a family belongs to: its own kind, or all kinds when it is not among them. */
export function fitGroup(family: string | null): FitGroup {
  const wanted = family?.trim().toLowerCase();
  return PROPELLER_KINDS.find((kind) => kind === wanted) ?? "all kinds";
}

/** Where the measurements of a family's kind end: diameters in inches and pitch over diameter. */
export function measuredShapes(family: string | null): {
  readonly diametersIn: readonly [number, number];
  readonly pitchRatios: readonly [number, number];
} {
  const { diameterRangeIn, pitchRatioRange } = coefficientFit(fitGroup(family), "power");
  return { diametersIn: diameterRangeIn, pitchRatios: pitchRatioRange };
}

function predict(shape: PropellerShape, name: CoefficientName): PredictedCoefficient {
  for (const value of [shape.diameterIn, shape.pitchIn, shape.blades]) {
    if (!(value > 0 && Number.isFinite(value))) {
      throw new RangeError(`a propeller needs positive diameter, pitch and blades: got ${value}`);
    }
  }
  const group = fitGroup(shape.family);
  const fit = coefficientFit(group, name);
  const { log, standardDeviation } = predictLog(fit, shape.diameterIn, shape.pitchIn);
  const beyond = doubtBeyondTable(shape, name, group);
  const blades = Math.log(shape.blades / 2);
  const halfWidth = Math.hypot(
    fit.t * standardDeviation,
    TWO_SIDED_95 * beyond.standardDeviation,
    BLADE_POWER_HALF_WIDTH * blades,
  );
  const centre = log + BLADE_POWER * blades;
  return {
    value: Math.exp(centre),
    low: Math.exp(centre - halfWidth),
    high: Math.exp(centre + halfWidth),
    relativeSd: halfWidth / TWO_SIDED_95,
    group,
    isExtrapolated: beyond.remarks.length > 0,
    remarks: [
      ...(group === "all kinds" ? [familyNotKnown(shape.family, PROPELLER_KINDS)] : []),
      ...beyond.remarks,
      ...(shape.blades === 2 ? [] : [scaledForBlades(shape.blades)]),
    ],
  };
}

/** One standard deviation in the logarithm for a shape outside the table, and why. */
function doubtBeyondTable(
  shape: PropellerShape,
  name: CoefficientName,
  group: FitGroup,
): { readonly standardDeviation: number; readonly remarks: readonly string[] } {
  const fit = coefficientFit(group, name);
  const ratio = shape.pitchIn / shape.diameterIn;
  const ofPitch = SLOPE_DOUBT * Math.abs(fit.coefficients[1]!) * logBeyond(ratio, fit.pitchRatioRange);
  const diameterSlope = diameterMatters(group, name) ? SLOPE_DOUBT * DIAMETER_DOUBT : DIAMETER_DOUBT;
  const ofDiameter = diameterSlope * logBeyond(shape.diameterIn, fit.diameterRangeIn);
  const remarks: string[] = [];
  if (ofPitch > 0) remarks.push(outsideMeasured("pitch over diameter", ratio, ...fit.pitchRatioRange, group));
  if (ofDiameter > 0) {
    remarks.push(outsideMeasured("diameter in inches", shape.diameterIn, ...fit.diameterRangeIn, group));
  }
  return { standardDeviation: Math.hypot(ofPitch, ofDiameter), remarks };
}

/** How far, in the logarithm, a value lies outside a range; 0 inside. */
function logBeyond(value: number, [low, high]: readonly [number, number]): number {
  return Math.max(0, Math.log(value / high), Math.log(low / value));
}
