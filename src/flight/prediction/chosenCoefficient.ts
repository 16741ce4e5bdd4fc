import {
  type MeasuredCoefficient,
  type PropellerShape,
  predictBesideMeasured,
  predictStaticPowerCoefficient,
} from "../../physics/index.ts";
import { isSameShape } from "./flownPropellers.ts";
import type { FlownPropeller, KnownParts, KnownValue } from "./knownParts.ts";
import type { Range } from "./range.ts";
import { combinedWithMeasured, publishedForKind, unlikePublished } from "./sentences.ts";

const TWO_SIDED_95 = 1.96;

/** A power coefficient to plan with. */
export interface ChosenCoefficient extends Range {
  readonly isMeasured: boolean;
  /** What widens the interval or does not fit its kind, in words. */
  readonly remarks: readonly string[];
}

type Measured = FlownPropeller & { readonly shape: PropellerShape; readonly powerCoefficient: KnownValue };

/**
 * Static power coefficient of a propeller: its own where logs give it; else the published line of its kind
 * combined with the nearest measured one; else the line alone.
 */
export function chosenCoefficient(shape: PropellerShape, known: KnownParts): ChosenCoefficient {
  const measured = known.flown.filter(
    (one): one is Measured => one.shape !== null && one.powerCoefficient !== null,
  );
  const own = measured.find((one) => isSameShape(one.shape, shape));
  if (own)
    return { ...own.powerCoefficient, isMeasured: true, remarks: unlikeItsKind(shape, own.powerCoefficient) };
  const nearest = measured.toSorted(
    (one, other) => distance(one.shape, shape) - distance(other.shape, shape),
  )[0];
  if (nearest) return besideMeasured(shape, nearest);
  const line = predictStaticPowerCoefficient(shape);
  const { value, low, high, remarks } = line;
  return {
    value,
    low,
    high,
    basis: publishedForKind(line.group),
    isMeasured: false,
    remarks,
  };
}

/** A measured coefficient outside its kind's published interval is worth a look at what the file says. */
function unlikeItsKind(shape: PropellerShape, measured: KnownValue): readonly string[] {
  const line = predictStaticPowerCoefficient(shape);
  const isUnlike = measured.low > line.high || measured.high < line.low;
  return isUnlike ? [unlikePublished(measured.value, line.low, line.high, line.group)] : [];
}

function distance(one: PropellerShape, other: PropellerShape): number {
  const blades = one.blades === other.blades ? 0 : 10;
  return (
    blades +
    Math.abs(Math.log(one.diameterIn / other.diameterIn)) +
    Math.abs(Math.log(one.pitchIn / other.pitchIn))
  );
}

/**
 * The line of the kind combined with a measured propeller. One measured outside its own 95 % interval shows that
 * something common is at work (its make, its mounting, the sensors): the excess variance s^2 = shift^2 - 1.96^2 v
 * is taken as common to this pilot's propellers, so the prediction moves by the share s^2 / (s^2 + v) of the
 * shift and its variance becomes v' + s^2 v / (s^2 + v). Within the interval only the likeness of neighbours counts.
 */
function besideMeasured(
  shape: PropellerShape,
  { shape: there, powerCoefficient, flights }: Measured,
): ChosenCoefficient {
  const relativeSd = Math.log(powerCoefficient.high / powerCoefficient.low) / (2 * TWO_SIDED_95);
  const given: MeasuredCoefficient = { shape: there, powerCoefficient: powerCoefficient.value, relativeSd };
  const line = predictStaticPowerCoefficient(shape);
  const lineThere = predictStaticPowerCoefficient(there);
  const beside = predictBesideMeasured(shape, given);
  const variance = lineThere.relativeSd ** 2 + relativeSd ** 2;
  const shift = Math.log(powerCoefficient.value / lineThere.value);
  const common = Math.max(0, shift ** 2 - TWO_SIDED_95 ** 2 * variance);
  const basis = combinedWithMeasured(line.group, flights);
  const more = { basis, isMeasured: false, remarks: line.remarks };
  if (common === 0) return { value: beside.value, low: beside.low, high: beside.high, ...more };
  const weight = common / (common + variance);
  const sd = Math.sqrt(line.relativeSd ** 2 + common * (1 - weight));
  const centre = line.value * Math.exp(weight * shift);
  const factor = Math.exp(TWO_SIDED_95 * sd);
  return { value: centre, low: centre / factor, high: centre * factor, ...more };
}
