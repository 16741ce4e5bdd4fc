import type { Facts } from "../../aircraft/facts.ts";
import { METRES_PER_INCH } from "../../base/quantity/index.ts";
import { type MotorConstants, motorState, powerCoefficient } from "../../physics/index.ts";
import type { DayAir } from "./motorLoadConstants.ts";
import type { LoadPoint } from "./motorLoadPoint.ts";

/** Shaft power over rho n^3 D^5 of a motor at a steady point; NaN without a diameter. */
export function coefficientAt(point: LoadPoint, motor: MotorConstants, facts: Facts, air: DayAir): number {
  const { diameterIn } = facts.propeller;
  if (diameterIn === null) return Number.NaN;
  const { shaftPowerW } = motorState(point.packV, point.packA, point.speedRevPerS, motor);
  return powerCoefficient(shaftPowerW, air.density, point.speedRevPerS, diameterIn * METRES_PER_INCH);
}
