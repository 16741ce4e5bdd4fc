import type { Facts } from "../../aircraft/facts.ts";
import { airDensityAt, DAY_DENSITY_RELATIVE_SD, type MotorConstants } from "../../physics/index.ts";
import type { DayFacts } from "./dayFacts.ts";
import { NO_MOTOR_CONSTANTS } from "./identifiedSentences.ts";

/**
 * Half-widths (95 %, relative) of constants taken from a data sheet: kv 5 %, resistance 30 %, no-load current
 * 60 % (common practice, no published source; half of each is one standard deviation).
 */
export const CONSTANTS_HALF_WIDTH = { kv: 0.05, ohm: 0.3, noLoad: 0.6 } as const;

export type ConstantsOrWhy =
  | { readonly motor: MotorConstants; readonly why: null }
  | { readonly motor: null; readonly why: string };

/** Speed constant, path resistance (winding and controller in series) and no-load current of one motor. */
export function motorConstants({ motor, controller }: Facts): ConstantsOrWhy {
  const { kv, windingOhm, noLoadA } = motor;
  if (kv === null || windingOhm === null || noLoadA === null) return { motor: null, why: NO_MOTOR_CONSTANTS };
  const pathOhm = windingOhm + (controller.resistanceMohm ?? 0) / 1000;
  return { motor: { kvRpmPerV: kv, pathOhm, noLoadA }, why: null };
}

/** Air density of the day, kg/m3, and its relative 95 % half-width. */
export interface DayAir {
  readonly density: number;
  readonly relativeHalfWidth: number;
}

/** Spread of the air temperature, degC (1 sd): stated for the day, known only for the place, not known. */
const DAY_SD_C = 2;
const PLACE_SD_C = 8;
const STANDARD_C = 15;

export function dayAir(facts: Facts, day: DayFacts): DayAir {
  const ambientC = day.ambientC ?? facts.field.ambientC ?? STANDARD_C;
  const sdC = day.ambientC === null ? PLACE_SD_C : DAY_SD_C;
  return {
    density: airDensityAt(facts.field.elevationM, ambientC),
    relativeHalfWidth: 2 * Math.hypot(DAY_DENSITY_RELATIVE_SD, sdC / (ambientC + 273.15)),
  };
}
