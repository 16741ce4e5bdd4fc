import type { Facts } from "../../aircraft/facts.ts";
import { COULOMBS_PER_MAH, METRES_PER_INCH, SECONDS_PER_MINUTE } from "../../base/quantity/index.ts";
import { type FullThrottle, fullThrottleEquilibrium, motorCurrentA } from "../../physics/index.ts";
import type { HeatDriver } from "../analysis/index.ts";
import type { InputValues } from "./planInputs.ts";

/** What a plan predicts. */
export const PLAN_MEASURES = [
  "staticCurrentA",
  "staticRpm",
  "staticPowerW",
  "minCellV",
  "sagPerCellV",
  "meanCurrentA",
  "flightTimeS",
  "controllerHotDayPeakC",
  "powerLoadingWPerKg",
] as const;
export type PlanMeasure = (typeof PLAN_MEASURES)[number];
export type PlanValues = { readonly [name in PlanMeasure]: number };

/** What has no interval: counts, sizes and the pilot's own choices. Missing facts are NaN. */
export interface PlanFrame {
  readonly cells: number;
  readonly motorCount: number;
  readonly diameterM: number;
  readonly massKg: number;
  readonly hotDayC: number;
  readonly reserveShare: number;
  /** What heats the controller in a fitted model; null where flights gave the rise itself. */
  readonly driver: HeatDriver | null;
}

export function frameOf(facts: Facts, reservePct: number, driver: HeatDriver | null): PlanFrame {
  return {
    cells: facts.pack.cells ?? Number.NaN,
    motorCount: facts.motor.count,
    diameterM: (facts.propeller.diameterIn ?? Number.NaN) * METRES_PER_INCH,
    massKg: facts.flyingMassKg ?? Number.NaN,
    hotDayC: facts.field.hotDayC,
    reserveShare: reservePct / 100,
    driver,
  };
}

/**
 * Everything a plan predicts from one set of numbers. Static: full throttle on the ground on a full pack. minCellV:
 * the same load with the charge down to the reserve, so a go-around at the end. Both with the resistance ten
 * seconds into a load. flightTimeS: to the reserve at the mean current, run-up and taxi taken off.
 */
export function planModel(values: InputValues, frame: PlanFrame): PlanValues {
  const full = fullThrottle(values, frame, values.startCellV);
  const late = fullThrottle(values, frame, values.lateCellV);
  const staticA = full?.packA ?? Number.NaN;
  const staticPowerW = full?.packPowerW ?? Number.NaN;
  const meanCurrentA = values.cruiseShare * staticA;
  const usableMah = values.capacityMah * (1 - frame.reserveShare) - values.groundMah;
  return {
    staticCurrentA: staticA,
    staticRpm: (full?.speedRevPerS ?? Number.NaN) * SECONDS_PER_MINUTE,
    staticPowerW,
    minCellV: (late?.packV ?? Number.NaN) / frame.cells,
    sagPerCellV: (staticA * values.packMohm) / 1000 / frame.cells,
    meanCurrentA,
    flightTimeS: Math.max(0, usableMah * COULOMBS_PER_MAH) / meanCurrentA,
    controllerHotDayPeakC: frame.hotDayC + controllerRiseC(values, frame, full),
    powerLoadingWPerKg: staticPowerW / frame.massKg,
  };
}

export function fullThrottle(values: InputValues, frame: PlanFrame, cellV: number): FullThrottle | null {
  return fullThrottleEquilibrium({
    openCircuitV: cellV * frame.cells,
    packOhm: values.packMohm / 1000,
    motor: { kvRpmPerV: values.kv, pathOhm: values.pathOhm, noLoadA: values.noLoadA },
    motorCount: frame.motorCount,
    powerCoefficient: values.powerCoefficient,
    diameterM: frame.diameterM,
    density: values.density,
  });
}

/** The flights' own rise in proportion to the load, else the fitted rise per square ampere. */
function controllerRiseC(values: InputValues, frame: PlanFrame, full: FullThrottle | null): number {
  if (!Number.isNaN(values.riseC)) return values.riseC * values.riseRatio;
  return values.risePerA2 * heatingA2(values, frame, full);
}

/**
 * Square of the current that heats the controller at the mean power of a flight: out of the pack, or through the
 * motor. Shaft speed goes with the cube root of the power, as for a propeller at one advance ratio.
 */
export function heatingA2(values: InputValues, frame: PlanFrame, full: FullThrottle | null): number {
  if (full === null) return Number.NaN;
  const meanA = values.cruiseShare * full.packA;
  if (frame.driver === "packCurrent") return meanA ** 2;
  const openV = (frame.cells * (values.startCellV + values.lateCellV)) / 2;
  const packV = openV - (meanA * values.packMohm) / 1000;
  const speed = full.speedRevPerS * Math.cbrt((packV * meanA) / full.packPowerW);
  return motorCurrentA(packV, meanA / frame.motorCount, speed, values.kv, values.pathOhm) ** 2;
}
