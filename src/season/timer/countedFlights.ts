import type { Facts } from "../../aircraft/facts.ts";
import type { LogbookEntry } from "../logbook/index.ts";
import type { LoggedLoad } from "./loggedLoad.ts";
import {
  benchRunLeftOut,
  cutShortLeftOut,
  deadSensorLeftOut,
  otherCellsLeftOut,
  otherPropellerLeftOut,
} from "./sentences.ts";

/** A flight that does not count for the timer, and why. */
export interface LeftOutFlight {
  readonly flight: string;
  readonly why: string;
}

export interface CountedFlights {
  readonly counted: readonly LogbookEntry[];
  readonly leftOut: readonly LeftOutFlight[];
}

/**
 * The flights that say something about the next one: complete, with a known load, on the propeller and
 * cell count that are fitted now.
 */
export function countedFlights(entries: readonly LogbookEntry[], fitted: Facts): CountedFlights {
  const reasons = entries.map((entry) => ({ entry, why: reasonToLeaveOut(entry, fitted) }));
  return {
    counted: reasons.filter(({ why }) => why === null).map(({ entry }) => entry),
    leftOut: reasons.flatMap(({ entry, why }) => (why === null ? [] : [{ flight: entry.flight, why }])),
  };
}

function reasonToLeaveOut(entry: LogbookEntry, fitted: Facts): string | null {
  if (entry.check.kind === "benchRun") return benchRunLeftOut();
  const propeller = propellerName(entry);
  const fittedPropeller = propellerOf(fitted);
  if (propeller !== null && fittedPropeller !== null && propeller !== fittedPropeller) {
    return otherPropellerLeftOut(propeller, fittedPropeller);
  }
  if (entry.facts.pack.cells !== fitted.pack.cells) {
    return otherCellsLeftOut(entry.facts.pack.cells, fitted.pack.cells);
  }
  if (!entry.check.complete) return cutShortLeftOut();
  const { chargeUsedMah } = entry.check.measures;
  if (chargeUsedMah.value === null) return deadSensorLeftOut(chargeUsedMah.why);
  return entry.load === null ? deadSensorLeftOut("its take-off or touchdown was not found") : null;
}

/** The propeller a flight was flown on, as "18x10", or null when nobody said. */
export function propellerName(entry: LogbookEntry): string | null {
  return entry.given.propeller ?? propellerOf(entry.facts);
}

function propellerOf(facts: Facts): string | null {
  const { diameterIn, pitchIn } = facts.propeller;
  return diameterIn === null || pitchIn === null ? null : `${diameterIn}x${pitchIn}`;
}

/** The load of a counted flight with its charges corrected by `gain` and its length by the pilot's watch. */
export function loadOf(entry: LogbookEntry, gain: number): LoggedLoad | null {
  const { load } = entry;
  if (load === null) return null;
  return {
    flight: entry.flight,
    climbS: load.climbS,
    climbChargeMah: gain * load.climbChargeMah,
    rateMahPerS: gain * rateByTheWatch(entry, load.rateMahPerS, load.climbS),
    groundChargeMah: gain * load.groundChargeMah,
    approachS: load.approachS,
    peakCurrentA: gain * load.peakCurrentA,
  };
}

/** `--flown` replaces the measured flight time: the same charge over the pilot's own length. */
function rateByTheWatch(entry: LogbookEntry, rateMahPerS: number, climbS: number): number {
  const { flownS } = entry.given;
  const measuredS = entry.check.measures.flightTimeS.value;
  if (flownS === null || measuredS === null || flownS <= climbS || measuredS <= climbS) return rateMahPerS;
  return (rateMahPerS * (measuredS - climbS)) / (flownS - climbS);
}
