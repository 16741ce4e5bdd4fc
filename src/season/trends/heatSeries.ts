import { isKnown, known, type Quantity, unknown } from "../../base/quantity/index.ts";
import { type Decays, sharedDecays } from "../../flight/analysis/index.ts";
import { flownPropeller } from "../timer/index.ts";
import { controllerKey, controllerName, groupsBy, powerTrainKey } from "./fittings.ts";
import { flightSolver } from "./heatFlight.ts";
import { type PooledHeat, pooledHeat, refitted } from "./pooledHeat.ts";
import { plainSeries, type RawSeries } from "./rawSeries.ts";
import { coolingNeedsSpeed, NO_HEAT_TRACE } from "./sentences.ts";
import type { TrendFlight } from "./trendFlight.ts";

/** How far a flight's own time constant is looked for around the pooled one: a factor of e. */
const REFIT_REACH = 1;
/** Half-width where the flight's own log does not bound its heating: the scatter of held time constants, 2 sd. */
const USUAL_HALF_WIDTH = 0.07;

/**
 * Rise per square ampere, one series per controller, motor and propeller. With the motor current known each flight's
 * time constant is refitted, so that extra heat and lost cooling both show. Else the pooled time constant is held and
 * only the heat is solved for: lost cooling stays unseen, and a series of its own says so.
 */
export function heatSeries(flights: readonly TrendFlight[]): readonly RawSeries[] {
  const decays = sharedDecays();
  return groupsBy(flights, controllerKey).flatMap((ofController) => {
    const pooled = pooledHeat(ofController, decays);
    return groupsBy(ofController, powerTrainKey).flatMap((group) => seriesOf(group, pooled, decays));
  });
}

function seriesOf(
  group: readonly TrendFlight[],
  pooled: PooledHeat | null,
  decays: Decays,
): readonly RawSeries[] {
  const first = group[0];
  if (first === undefined) return [];
  const of = { pack: null, propeller: flownPropeller(first), controller: controllerName(first) };
  const raw = { measure: "controllerRisePerA2", unit: "degC/A2", of, direction: "up" } as const;
  if (pooled === null) {
    const own = plainSeries(raw, group, (flight) => flight.check.measures.controllerRisePerA2);
    return own.points.length === 0 ? [] : [own];
  }
  const heats = new Map(group.map((flight) => [flight, heatIn(flight, pooled, decays)]));
  const series = plainSeries(
    raw,
    group,
    (flight) => heats.get(flight)?.rise ?? unknown("degC/A2", NO_HEAT_TRACE),
  );
  if (series.points.length === 0) return [];
  if (!pooled.isMotorCurrentKnown) return [series, coolingNotJudged(series)];
  const timeConstantsS = series.entries.map(
    (flight) => heats.get(flight)?.timeConstantS ?? pooled.timeConstantS,
  );
  return [{ ...series, timeConstantsS }];
}

/** Without the motor current a time constant of its own would say more about the flying than about the cooling. */
function coolingNotJudged(series: RawSeries): RawSeries {
  return {
    ...series,
    measure: "controllerTimeConstantS",
    unit: "s",
    points: [],
    x: [],
    variants: [],
    entries: [],
    notJudged: coolingNeedsSpeed(),
  };
}

interface FlightHeat {
  readonly rise: Quantity;
  readonly timeConstantS: number;
}

function heatIn(flight: TrendFlight, pooled: PooledHeat, decays: Decays): FlightHeat | null {
  const { driver, fullA, timeConstantS, probeLagS, isMotorCurrentKnown } = pooled;
  const solve = flightSolver(flight, driver, fullA, decays);
  if (solve === null) return null;
  const solved = isMotorCurrentKnown
    ? refitted(solve, timeConstantS, probeLagS, REFIT_REACH)
    : solve(timeConstantS, probeLagS);
  if (solved === null || !(solved.gain > 0)) return null;
  const rise = solved.gain * solved.timeConstantS;
  const halfWidth = rise * relativeHalfWidth(flight);
  return { rise: known(rise, halfWidth, "degC/A2", "derived"), timeConstantS: solved.timeConstantS };
}

/** As the flight's own fit has it. */
function relativeHalfWidth({ check }: TrendFlight): number {
  const own = check.measures.controllerRisePerA2;
  if (!isKnown(own) || own.low === null || own.high === null) return USUAL_HALF_WIDTH;
  return (own.high - own.low) / 2 / own.value;
}
