import { known, type Quantity, unknown } from "../../base/quantity/index.ts";
import type { LogbookEntry } from "../logbook/index.ts";
import { flownPropeller } from "../timer/index.ts";
import { controllerName, demandKey, groupsBy, powerTrainKey } from "./fittings.ts";
import { plainSeries, type RawSeries } from "./rawSeries.ts";
import { NO_WHOLE_FLIGHT } from "./sentences.ts";

/** Charge per second after the climb, by propeller: how the flights are flown as much as what they cost. */
export function rateSeries(entries: readonly LogbookEntry[]): readonly RawSeries[] {
  return groupsBy(entries, demandKey).flatMap((group) => {
    const of = { pack: null, propeller: flownPropeller(group[0]!), controller: null };
    const raw = { measure: "chargeRateMahPerS", unit: "mAh/s", of, direction: "up" } as const;
    return withPoints(plainSeries(raw, group, rateOf));
  });
}

/** Of a whole flight; the current sensor's accuracy is its interval. */
function rateOf({ load, check, facts }: LogbookEntry): Quantity {
  if (load === null || !check.complete) return unknown("mAh/s", NO_WHOLE_FLIGHT);
  const halfWidth = (load.rateMahPerS * facts.sensors.currentAccuracyPct) / 100;
  return known(load.rateMahPerS, halfWidth, "mAh/s", "derived");
}

/** Static power coefficient by propeller: a worn or chipped blade takes less. */
export function coefficientSeries(entries: readonly LogbookEntry[]): readonly RawSeries[] {
  return groupsBy(entries, powerTrainKey).flatMap((group) => {
    const of = { pack: null, propeller: flownPropeller(group[0]!), controller: controllerName(group[0]!) };
    const raw = { measure: "propellerPowerCoefficient", unit: "1", of, direction: "down" } as const;
    return withPoints(plainSeries(raw, group, ({ check }) => check.measures.propellerPowerCoefficient));
  });
}

function withPoints(series: RawSeries): readonly RawSeries[] {
  return series.points.length === 0 ? [] : [series];
}
