import type { Facts } from "../../aircraft/facts.ts";

/** Winding and controller in series, ohm; null without the winding. */
export function pathOhmOf({ motor, controller }: Facts): number | null {
  return motor.windingOhm === null ? null : motor.windingOhm + (controller.resistanceMohm ?? 0) / 1000;
}
