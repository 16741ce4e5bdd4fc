import { type HeatDriver, heatSolver, numbersOf } from "../../flight/analysis/index.ts";
import type { TrendFlight } from "./trendFlight.ts";

/** Heating of one flight, solved for given time constants: least squares in ambient, start and gain. */
export type FlightSolver = ReturnType<typeof heatSolver>;

/** Seconds of readings that count as one independent reading: neighbouring residuals are alike. */
const MEMORY_S = 15;
/** A controller's probe and the air at its place against the air that the pilot states, degC, 1 sd. */
const AIR_SD_C = 2;
/** Scatter of one reading about the model, degC, before any fit tells it. */
const READING_SD_C = 0.5;
const FOUR_THIRDS = 4 / 3;

/**
 * Solver of one flight under one driver; null where its trace does not hold that driver.
 * @param fullA the current at which the stand-in for the motor current equals the pack current; common to all flights
 */
export function flightSolver(flight: TrendFlight, driver: HeatDriver, fullA: number): FlightSolver | null {
  const trace = flight.check.heatTrace;
  const currentA = trace?.drivers.find((one) => one.driver === driver)?.currentA;
  if (!trace || !currentA) return null;
  const { ambientC } = flight.given;
  const isFourThirds = driver === "powerFourThirds";
  const scale = fullA ** (2 - FOUR_THIRDS);
  return heatSolver({
    stepS: trace.stepS,
    temperatureC: numbersOf(trace.temperatureC),
    driver: numbersOf(currentA).map((amps) => (isFourThirds ? scale * amps ** FOUR_THIRDS : amps * amps)),
    ambientC: ambientC ?? 0,
    ambientWeight: ambientC === null ? 0 : ((MEMORY_S / trace.stepS) * READING_SD_C ** 2) / AIR_SD_C ** 2,
  });
}
