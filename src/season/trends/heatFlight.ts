import {
  type Decays,
  type HeatDriver,
  heatSolver,
  heatSums,
  numbersOf,
} from "../../flight/analysis/index.ts";
import type { TrendFlight } from "./trendFlight.ts";

/** Heating of one flight, solved for given time constants: least squares in ambient, start and gain. */
export type FlightSolver = ReturnType<typeof heatSolver>;

/** Seconds of readings that count as one independent reading: neighbouring residuals are alike. */
const MEMORY_S = 15;
/** A controller's probe and the air at its place against the air that the pilot states, degC, 1 sd. */
const STATED_SD_C = 2;
/** The same against the controller's first reading of the log: sun and standby warm it. */
const FIRST_READING_SD_C = 4;
/** Scatter of one reading about the model, degC, before any fit tells it. */
const READING_SD_C = 0.5;
const FOUR_THIRDS = 4 / 3;

/**
 * Solver of one flight under one driver; null where its trace does not hold that driver.
 * @param fullA the current at which the stand-in for the motor current equals the pack current; common to all flights
 * @param decays shared by the flights
 */
export function flightSolver(
  flight: TrendFlight,
  driver: HeatDriver,
  fullA: number,
  decays: Decays,
): FlightSolver | null {
  const trace = flight.check.heatTrace;
  const currentA = trace?.drivers.find((one) => one.driver === driver)?.currentA;
  if (!trace || !currentA) return null;
  const isFourThirds = driver === "powerFourThirds";
  const scale = fullA ** (2 - FOUR_THIRDS);
  const temperatureC = numbersOf(trace.temperatureC);
  const air = airOf(flight, temperatureC);
  const problem = {
    stepS: trace.stepS,
    temperatureC,
    driver: numbersOf(currentA).map((amps) => (isFourThirds ? scale * amps ** FOUR_THIRDS : amps * amps)),
    ambientC: air?.ambientC ?? 0,
    ambientWeight:
      air === null ? 0 : ((MEMORY_S / trace.stepS) * READING_SD_C ** 2) / air.standardDeviationC ** 2,
  };
  return heatSolver(problem, heatSums(problem, decays));
}

/** The air as stated, else the controller's first reading where no flight of the log came before; null neither. */
function airOf(
  { given, log }: TrendFlight,
  temperatureC: Float64Array,
): { readonly ambientC: number; readonly standardDeviationC: number } | null {
  if (given.ambientC !== null) return { ambientC: given.ambientC, standardDeviationC: STATED_SD_C };
  const first = temperatureC.find((one) => !Number.isNaN(one));
  return first === undefined || log.index > 0
    ? null
    : { ambientC: first, standardDeviationC: FIRST_READING_SD_C };
}
