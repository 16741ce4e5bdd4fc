import { median, minimumOf } from "../../base/statistics/index.ts";
import type { Decays, HeatDriver } from "../../flight/analysis/index.ts";
import { type FlightSolver, flightSolver } from "./heatFlight.ts";
import type { TrendFlight } from "./trendFlight.ts";

/** What the flights of one controller say together: the driver that explains them best, time constant and lag. */
export interface PooledHeat {
  readonly driver: HeatDriver;
  /** Enough flights log the shaft speed, so that the motor current was among the candidates. */
  readonly isMotorCurrentKnown: boolean;
  readonly fullA: number;
  /** Medians over the flights. */
  readonly timeConstantS: number;
  readonly probeLagS: number;
  /** Flights pooled. */
  readonly flights: number;
}

export const FEWEST_POOLED = 5;
/** So many flights settle a time constant; more cost time. */
const MOST_POOLED = 16;
const LAGS_S = [0, 1, 2, 3, 4, 6, 8] as const;
const SHORTEST_S = 15;
const LONGEST_S = 900;
const COARSE_STEPS = 16;
const COARSE_S = Array.from(
  { length: COARSE_STEPS },
  (_, k) => SHORTEST_S * (LONGEST_S / SHORTEST_S) ** (k / (COARSE_STEPS - 1)),
);
/** Between neighbours of the coarse list. */
const REACH = Math.log(LONGEST_S / SHORTEST_S) / (COARSE_STEPS - 1);

/** Null with fewer than five flights that hold a driver in common. */
export function pooledHeat(flights: readonly TrendFlight[], decays: Decays): PooledHeat | null {
  const traced = flights.filter((flight) => hasDriver(flight, "packCurrent"));
  const isMotorCurrentKnown = knowsMotorCurrent(traced);
  const drivers = ["packCurrent", isMotorCurrentKnown ? "motorCurrent" : "powerFourThirds"] as const;
  const candidates = drivers.flatMap((driver) => pooledWith(driver, traced, decays) ?? []);
  const best = candidates.reduce<Candidate | null>(
    (least, one) => (least === null || one.sumOfSquares < least.sumOfSquares ? one : least),
    null,
  );
  return best && { ...best.pooled, isMotorCurrentKnown };
}

interface Candidate {
  readonly pooled: Omit<PooledHeat, "isMotorCurrentKnown">;
  /** Median over the flights: candidates may rest on different numbers of flights. */
  readonly sumOfSquares: number;
}

function knowsMotorCurrent(traced: readonly TrendFlight[]): boolean {
  const holding = traced.filter((flight) => hasDriver(flight, "motorCurrent"));
  return holding.length >= FEWEST_POOLED && 2 * holding.length >= traced.length;
}

function hasDriver(flight: TrendFlight, driver: HeatDriver): boolean {
  return flight.check.heatTrace?.drivers.some((one) => one.driver === driver) ?? false;
}

function pooledWith(driver: HeatDriver, traced: readonly TrendFlight[], decays: Decays): Candidate | null {
  const holding = traced.filter((flight) => hasDriver(flight, driver));
  if (holding.length < FEWEST_POOLED) return null;
  const fullA = median(holding.map((flight) => flight.load?.peakCurrentA ?? 1));
  const stride = Math.ceil(holding.length / MOST_POOLED);
  const fits = holding
    .filter((_, index) => index % stride === 0)
    .flatMap((flight) => ownFit(flightSolver(flight, driver, fullA, decays)) ?? []);
  if (fits.length < FEWEST_POOLED) return null;
  const pooled = {
    driver,
    fullA,
    timeConstantS: median(fits.map((fit) => fit.timeConstantS)),
    probeLagS: median(fits.map((fit) => fit.lagS)),
    flights: fits.length,
  };
  return { pooled, sumOfSquares: median(fits.map((fit) => fit.sumOfSquares)) };
}

/** One flight's own time constant and lag. */
function ownFit(solve: FlightSolver | null): NonNullable<ReturnType<FlightSolver>> | null {
  if (solve === null) return null;
  const solved = LAGS_S.flatMap((lagS) => COARSE_S.flatMap((constantS) => solve(constantS, lagS) ?? []));
  const coarse = solved.reduce<(typeof solved)[number] | null>(
    (least, one) => (least === null || one.sumOfSquares < least.sumOfSquares ? one : least),
    null,
  );
  return coarse && refitted(solve, coarse.timeConstantS, coarse.lagS, REACH);
}

/** The time constant within a factor exp(reach) of `nearS` that fits best, the lag held. */
export function refitted(
  solve: FlightSolver,
  nearS: number,
  lagS: number,
  reach: number,
): ReturnType<FlightSolver> {
  const sumAt = (log: number) => solve(Math.exp(log), lagS)?.sumOfSquares ?? Number.POSITIVE_INFINITY;
  const { at } = minimumOf(sumAt, Math.log(nearS) - reach, Math.log(nearS) + reach, 1e-3);
  return solve(Math.exp(at), lagS);
}
