import type { Facts } from "../../aircraft/facts.ts";
import {
  between,
  isKnown,
  METRES_PER_INCH,
  type Quantity,
  revPerSecond,
  unknown,
} from "../../base/quantity/index.ts";
import { predictStaticThrustCoefficient, propellerThrustN } from "../../physics/index.ts";
import { shapeOf } from "./flownPropellers.ts";
import { isRange, type PlanInputs } from "./planInputs.ts";
import { NO_PROPELLER_SIZE, THRUST_ESTIMATED } from "./sentences.ts";

/** Standard acceleration of free fall, m/s2 (3rd General Conference on Weights and Measures, 1901). */
const STANDARD_GRAVITY = 9.80665;

/** The most that the thrust may be of the weight, dimensionless; null where the thrust is not known. */
export function mostThrustToWeight(thrustN: Quantity, massKg: number): number | null {
  if (!isKnown(thrustN) || thrustN.high === null) return null;
  return thrustN.high / (massKg * STANDARD_GRAVITY);
}

/** Static thrust of all propellers, N: an estimate, as wide as the published coefficients of the kind. */
export function staticThrustN(facts: Facts, staticRpm: Quantity, { density }: PlanInputs): Quantity {
  const shape = shapeOf(facts);
  if (shape === null) return unknown("N", NO_PROPELLER_SIZE);
  if (!isKnown(staticRpm)) return unknown("N", staticRpm.why);
  if (!isRange(density)) return unknown("N", density.why);
  const coefficient = predictStaticThrustCoefficient(shape);
  const thrust = (of: number, rpm: number, air: number) =>
    facts.motor.count * propellerThrustN(of, air, revPerSecond(rpm), shape.diameterIn * METRES_PER_INCH);
  const value = thrust(coefficient.value, staticRpm.value, density.value);
  const side = (end: "low" | "high") =>
    Math.hypot(
      thrust(coefficient[end], staticRpm.value, density.value) - value,
      thrust(coefficient.value, staticRpm[end] ?? staticRpm.value, density.value) - value,
      thrust(coefficient.value, staticRpm.value, density[end]) - value,
    );
  return between(value, Math.max(0, value - side("low")), value + side("high"), "N", "estimated", {
    why: THRUST_ESTIMATED,
  });
}
