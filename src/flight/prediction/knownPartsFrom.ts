import { between, isKnown, type Quantity, revPerSecond, unknown } from "../../base/quantity/index.ts";
import { mean } from "../../base/statistics/index.ts";
import { kvFromFullThrottle } from "../../physics/index.ts";
import { isCurrentEstimated, type MeasureName } from "../analysis/index.ts";
import { flownPropellers } from "./flownPropellers.ts";
import type { KnownController, KnownPack, KnownParts, KnownValue, LoggedFlight } from "./knownParts.ts";
import { pathOhmOf } from "./motorFacts.ts";
import { type Pooling, pooled } from "./pooled.ts";
import { measuredOnPacks } from "./sentences.ts";

/** A cell this close to full was full: other flights say nothing about a full pack. */
const NEAR_FULL_V = 0.05;
/**
 * Half-width of the speed constant from one full-throttle reading when the path's resistance is right (simulated;
 * 1 sd 0.9 % with the doubt about the path).
 */
const KV_HALF_WIDTH = 0.013;
/** Beyond this a speed sensor's setting is wrong rather than the motor: not taken for a speed constant. */
const KV_BELIEVED = 0.12;

/**
 * Spread from flight to flight before any is known, relative (1 sd); our choice from simulated seasons. A pack's
 * resistance moves by a tenth with some 4 degC of its temperature.
 */
const SPREADS: Readonly<Record<"resistance" | "startV" | "kv" | "rise" | "tau" | "ground", Pooling>> = {
  resistance: { priorSpread: 0.1, of: "next" },
  startV: { priorSpread: 0.002, of: "next" },
  kv: { priorSpread: 0.005, of: "part" },
  rise: { priorSpread: 0.04, of: "part" },
  tau: { priorSpread: 0.04, of: "part" },
  ground: { priorSpread: 0.3, of: "next" },
};

/**
 * What the flights of one aircraft say about its parts, each of them believed. Propellers are told apart; packs of other cells are not mixed.
 */
export function knownPartsFrom(flights: readonly LoggedFlight[]): KnownParts {
  return {
    pack: knownPack(flights),
    kv: pooled(flights.map(kvOf), SPREADS.kv),
    fullThrottle: fullThrottle(flights),
    controller: knownController(flights),
    flown: flownPropellers(flights),
    groundChargeMah: groundCharge(flights),
    leftOut: [],
  };
}

function of(flights: readonly LoggedFlight[], name: MeasureName): Quantity[] {
  return flights.map(({ measures }) => measures[name]);
}

/** The pack of the last flight; flights with other cells or another capacity do not count. */
function knownPack(flights: readonly LoggedFlight[]): KnownPack | null {
  const last = flights.at(-1)?.facts.pack;
  if (last === undefined || last.cells === null) return null;
  const same = flights.filter(
    ({ facts }) => facts.pack.cells === last.cells && facts.pack.capacityMah === last.capacityMah,
  );
  const full = of(same, "restCellV").filter(
    (cell) => isKnown(cell) && cell.value >= last.fullCellV - NEAR_FULL_V,
  );
  return {
    cells: last.cells,
    capacityMah: last.capacityMah,
    resistance10sMohm: resistanceByPack(same),
    startCellV: pooled(full, SPREADS.startV),
  };
}

/** Pooled for each pack by itself; several packs together span the weakest and the strongest. */
function resistanceByPack(flights: readonly LoggedFlight[]): KnownValue | null {
  const names = [...new Set(flights.map(({ pack }) => pack ?? null))];
  const each = names.flatMap((name) => {
    const own = flights.filter(({ pack }) => (pack ?? null) === name);
    return pooled(of(own, "packResistance10sMohm"), SPREADS.resistance) ?? [];
  });
  const [first, ...others] = each;
  if (first === undefined || others.length === 0) return first ?? null;
  const count = each.reduce((sum, one) => sum + one.flights, 0);
  return {
    value: each.reduce((sum, one) => sum + one.value * one.flights, 0) / count,
    low: Math.min(...each.map(({ low }) => low)),
    high: Math.max(...each.map(({ high }) => high)),
    flights: count,
    basis: measuredOnPacks(count, each.length),
  };
}

/** The speed constant that a full-throttle run on the ground shows. */
export function kvOf({ measures, facts }: Pick<LoggedFlight, "measures" | "facts">): Quantity {
  const { staticCurrentA, staticPowerW, staticRpm } = measures;
  const pathOhm = pathOhmOf(facts);
  const unit = "rev/min/V";
  if (!isKnown(staticCurrentA)) return unknown(unit, staticCurrentA.why);
  if (isCurrentEstimated(measures)) return unknown(unit, "its current is estimated, not logged");
  if (!isKnown(staticPowerW)) return unknown(unit, staticPowerW.why);
  if (!isKnown(staticRpm)) return unknown(unit, staticRpm.why);
  if (staticRpm.doubt !== undefined) return unknown(unit, staticRpm.doubt);
  if (pathOhm === null || facts.motor.kv === null)
    return unknown(unit, "the motor's constants are not given");
  const packV = staticPowerW.value / staticCurrentA.value;
  const motorA = staticCurrentA.value / facts.motor.count;
  const kv = kvFromFullThrottle(packV, motorA, revPerSecond(staticRpm.value), pathOhm);
  if (!(Math.abs(kv / facts.motor.kv - 1) <= KV_BELIEVED)) {
    return unknown(unit, "the speed constant it shows is too far from the stated one");
  }
  const halfWidth = kv * Math.hypot(KV_HALF_WIDTH, facts.sensors.voltageAccuracyPct / 100);
  return between(kv, kv - halfWidth, kv + halfWidth, unit, "derived");
}

function fullThrottle(flights: readonly LoggedFlight[]): KnownParts["fullThrottle"] {
  const points = flights
    .filter((flight) => isKnown(kvOf(flight)))
    .map(({ measures, facts }) => {
      const amps = measures.staticCurrentA.value ?? Number.NaN;
      return { packV: (measures.staticPowerW.value ?? Number.NaN) / amps, motorA: amps / facts.motor.count };
    });
  if (points.length === 0) return null;
  return { packV: mean(points.map(({ packV }) => packV)), motorA: mean(points.map(({ motorA }) => motorA)) };
}

/** Flights whose heating follows the driver that most of them show. */
function knownController(flights: readonly LoggedFlight[]): KnownController | null {
  const rises = flights.map(({ measures }) => measures.controllerRisePerA2);
  const drivers = rises.flatMap((rise) => (isKnown(rise) && rise.driver !== undefined ? [rise.driver] : []));
  const count = (one: string) => drivers.filter((driver) => driver === one).length;
  const driver = drivers.toSorted((one, other) => count(other) - count(one))[0];
  if (driver === undefined) return null;
  const same = flights.filter(({ measures }) => measures.controllerRisePerA2.driver === driver);
  const risePerA2 = pooled(of(same, "controllerRisePerA2"), SPREADS.rise);
  if (risePerA2 === null) return null;
  return { risePerA2, timeConstantS: pooled(of(same, "controllerTimeConstantS"), SPREADS.tau), driver };
}

function groundCharge(flights: readonly LoggedFlight[]): KnownValue | null {
  const charges = flights
    .filter(({ kind, complete, measures }) => kind === "flight" && complete && !isCurrentEstimated(measures))
    .map(({ measures: { chargeUsedMah, flightChargeMah } }) =>
      isKnown(chargeUsedMah) && isKnown(flightChargeMah)
        ? exactly(chargeUsedMah.value - flightChargeMah.value)
        : unknown("mAh", "no charge"),
    );
  return pooled(charges, SPREADS.ground);
}

function exactly(value: number): Quantity {
  return between(value, value, value, "mAh", "derived");
}
