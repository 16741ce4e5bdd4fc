import type { Facts } from "../../aircraft/facts.ts";
import { isKnown, type Quantity } from "../../base/quantity/index.ts";
import type { LogbookEntry } from "../logbook/index.ts";
import type { ChargeLimit } from "./chargeLimit.ts";
import type { ChargeConditions } from "./loggedLoad.ts";
import type { NextFlight } from "./nextFlight.ts";
import { limitNotKnown, limitNotReached } from "./sentences.ts";
import { temperatureLimitS } from "./temperatureLimit.ts";
import type { TimerLimit } from "./timerSetting.ts";
import { voltageLimitS } from "./voltageLimit.ts";

/** The touchdowns that loaded voltage and controller temperature allow. */
export function otherLimits(
  counted: readonly LogbookEntry[],
  charge: ChargeLimit,
  conditions: ChargeConditions,
  fitted: Facts,
  next: NextFlight,
  gain: number,
): readonly TimerLimit[] {
  return [
    { by: "voltage", ...byVoltage(counted, charge, conditions, fitted, gain) },
    { by: "temperature", ...byTemperature(counted, fitted, next) },
  ];
}

type Answer = Omit<TimerLimit, "by">;

function notKnown(what: string): Answer {
  return { touchdownByS: null, why: limitNotKnown(what) };
}

function reachedAt(seconds: number | null): Answer {
  return seconds === null
    ? { touchdownByS: null, why: limitNotReached() }
    : { touchdownByS: Math.floor(seconds) };
}

function byVoltage(
  counted: readonly LogbookEntry[],
  charge: ChargeLimit,
  conditions: ChargeConditions,
  fitted: Facts,
  gain: number,
): Answer {
  const { cells, minLoadedCellV, chemistry } = fitted.pack;
  if (cells === null || minLoadedCellV === null)
    return notKnown("the aircraft file gives no pack.minLoadedCellV");
  const resistances = upperEnds(counted, (entry) => entry.check.measures.packResistance10sMohm);
  if (resistances.length === 0) return notKnown("no counted flight gives the pack's resistance");
  const peaks = counted.flatMap((entry) => entry.load?.peakCurrentA ?? []);
  return reachedAt(
    voltageLimitS(charge, {
      cells,
      chemistry,
      minLoadedCellV,
      resistance10sOhm: Math.max(...resistances) / 1000,
      peakCurrentA: gain * Math.max(...peaks),
      capacityMah: conditions.capacityMah * conditions.health,
      startShare: conditions.startShare,
    }),
  );
}

function byTemperature(counted: readonly LogbookEntry[], fitted: Facts, next: NextFlight): Answer {
  const { limitC } = fitted.controller;
  if (limitC === null) return notKnown("the aircraft file gives no controller.limitC");
  const heated = counted.flatMap((entry) => heatOf(entry) ?? []);
  if (heated.length === 0) return notKnown("no counted flight lets the controller's heating be fitted");
  const hotDayC = next.ambientC ?? fitted.field.hotDayC;
  const touchdowns = heated.map((heat) => temperatureLimitS({ hotDayC, limitC, ...heat }));
  const reached = touchdowns.filter((seconds) => seconds !== null);
  return reachedAt(reached.length === 0 ? null : Math.min(...reached));
}

/** Heating of one counted flight under its own load; null when it was not identified. */
function heatOf(entry: LogbookEntry) {
  const { load } = entry;
  const { controllerRisePerA2, controllerTimeConstantS } = entry.check.measures;
  if (load === null || controllerRisePerA2.driver !== "packCurrent") return null;
  if (!isKnown(controllerRisePerA2) || !isKnown(controllerTimeConstantS)) return null;
  return {
    risePerA2: controllerRisePerA2.high ?? controllerRisePerA2.value,
    timeConstantS: controllerTimeConstantS.value,
    meanSquareCurrentA2: load.meanSquareCurrentA2,
    rippleC: 0,
  };
}

function upperEnds(
  counted: readonly LogbookEntry[],
  pick: (entry: LogbookEntry) => Quantity,
): readonly number[] {
  return counted.flatMap((entry) => {
    const quantity = pick(entry);
    return isKnown(quantity) ? [quantity.high ?? quantity.value] : [];
  });
}
