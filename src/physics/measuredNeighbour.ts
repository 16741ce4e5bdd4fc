import {
  type PredictedCoefficient,
  type PropellerShape,
  predictStaticPowerCoefficient,
} from "./staticPrediction.ts";

/** A power coefficient found in a log. */
export interface MeasuredCoefficient {
  readonly shape: PropellerShape;
  readonly powerCoefficient: number;
  /** One standard deviation, relative. */
  readonly relativeSd: number;
}

/**
 * How alike two propellers of one kind lie about their line, by how near their shapes are: over the UIUC static
 * means the product of two standardised residuals averages 0.2 to 0.3 within one step of size or pitch, and
 * nothing from there on.
 */
const LIKENESS = 0.3;
const REACH_DIAMETER = 0.2;
const REACH_PITCH_RATIO = 0.25;
const TWO_SIDED_95 = 1.96;

/**
 * Static power coefficient of another propeller of the same family and number of blades, the line of its kind
 * shifted by what a measured one showed: the linear (kriging) estimate with the likeness above. The measured one
 * moves the prediction little, because two propellers of a kind differ nearly as much as any two.
 * For the measured propeller itself use its own value. Another family or number of blades changes nothing.
 * @throws RangeError as `predictStaticPowerCoefficient`
 */
export function predictBesideMeasured(
  shape: PropellerShape,
  measured: MeasuredCoefficient,
): PredictedCoefficient {
  const line = predictStaticPowerCoefficient(shape);
  const lineThere = predictStaticPowerCoefficient(measured.shape);
  if (line.group !== lineThere.group || line.group === "all kinds") return line;
  if (shape.blades !== measured.shape.blades) return line;
  const likeness = likenessOf(shape, measured.shape);
  const shift = Math.log(measured.powerCoefficient / lineThere.value);
  const covariance = likeness * line.relativeSd * lineThere.relativeSd;
  const weight = covariance / (lineThere.relativeSd ** 2 + measured.relativeSd ** 2);
  const relativeSd = Math.sqrt(line.relativeSd ** 2 - weight * covariance);
  const centre = Math.log(line.value) + weight * shift;
  return {
    ...line,
    value: Math.exp(centre),
    low: Math.exp(centre - TWO_SIDED_95 * relativeSd),
    high: Math.exp(centre + TWO_SIDED_95 * relativeSd),
    relativeSd,
  };
}

function likenessOf(one: PropellerShape, other: PropellerShape): number {
  const diameter = Math.log(one.diameterIn / other.diameterIn);
  const ratio = Math.log(one.pitchIn / one.diameterIn / (other.pitchIn / other.diameterIn));
  return LIKENESS * Math.exp(-((diameter / REACH_DIAMETER) ** 2) - (ratio / REACH_PITCH_RATIO) ** 2);
}
