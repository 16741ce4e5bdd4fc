import type { Facts } from "../../aircraft/facts.ts";
import { between, isKnown, type Quantity, unknown } from "../../base/quantity/index.ts";
import type { PropellerShape } from "../../physics/index.ts";
import { isCurrentEstimated, type MeasureName } from "../analysis/index.ts";
import type { FlownPropeller, LoggedFlight } from "./knownParts.ts";
import { type Pooling, pooled } from "./pooled.ts";

/** Spread from flight to flight before any is known, relative (1 sd); our choice from simulated seasons. */
const COEFFICIENT: Pooling = { priorSpread: 0.01, of: "part" };
const STATIC: Pooling = { priorSpread: 0.02, of: "part" };
const CRUISE: Pooling = { priorSpread: 0.08, of: "next" };
const RISE: Pooling = { priorSpread: 0.1, of: "next" };

/** The propeller of the facts as a shape; null without diameter or pitch. */
export function shapeOf({ propeller }: Facts): PropellerShape | null {
  const { diameterIn, pitchIn, blades, family } = propeller;
  return diameterIn === null || pitchIn === null ? null : { diameterIn, pitchIn, blades, family };
}

/** Same size and blades; the family is the pilot's word for a kind. */
export function isSameShape(one: PropellerShape | null, other: PropellerShape | null): boolean {
  if (one === null || other === null) return one === other;
  return one.diameterIn === other.diameterIn && one.pitchIn === other.pitchIn && one.blades === other.blades;
}

/** What each propeller showed, the one with most flights first. */
export function flownPropellers(flights: readonly LoggedFlight[]): readonly FlownPropeller[] {
  const groups: { readonly shape: PropellerShape | null; readonly flights: LoggedFlight[] }[] = [];
  for (const flight of flights) {
    const shape = shapeOf(flight.facts);
    const group = groups.find((one) => isSameShape(one.shape, shape));
    if (group) group.flights.push(flight);
    else groups.push({ shape, flights: [flight] });
  }
  return groups
    .toSorted((one, other) => other.flights.length - one.flights.length)
    .map((group) => flownPropeller(group.shape, group.flights));
}

function flownPropeller(shape: PropellerShape | null, flights: readonly LoggedFlight[]): FlownPropeller {
  const of = (name: MeasureName) => flights.map(({ measures }) => measures[name]);
  const measured = flights.filter(({ measures }) => !isCurrentEstimated(measures));
  const flown = measured.filter(({ kind, complete }) => kind === "flight" && complete);
  const staticCurrentA = pooled(
    measured.map(({ measures }) => measures.staticCurrentA),
    STATIC,
  );
  return {
    shape,
    flights: flights.length,
    powerCoefficient: pooled(of("propellerPowerCoefficient"), COEFFICIENT),
    staticCurrentA,
    cruiseShare: pooled(
      flown.map((flight) => shareOf(flight, staticCurrentA?.value ?? null)),
      CRUISE,
    ),
    controllerRiseC: pooled(flown.map(riseOf), RISE),
  };
}

/** Mean current over static current of the same sensor: its gain cancels. */
function shareOf({ measures }: LoggedFlight, staticA: number | null): Quantity {
  const { meanCurrentA, staticCurrentA } = measures;
  const fullA = isKnown(staticCurrentA) ? staticCurrentA.value : staticA;
  if (!isKnown(meanCurrentA)) return unknown("1", meanCurrentA.why);
  if (fullA === null) return unknown("1", "no static current");
  const share = meanCurrentA.value / fullA;
  return between(share, share, share, "1", "derived");
}

function riseOf({ measures, facts }: LoggedFlight): Quantity {
  const peak = measures.controllerHotDayPeakC;
  if (!isKnown(peak) || peak.low === null || peak.high === null) return unknown("degC", "no hot-day peak");
  const { hotDayC } = facts.field;
  return between(peak.value - hotDayC, peak.low - hotDayC, peak.high - hotDayC, "degC", "predicted");
}
