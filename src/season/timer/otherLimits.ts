import type { Facts } from "../../aircraft/facts.ts";
import { highEnd, isKnown } from "../../base/quantity/index.ts";
import type { BriefFlight } from "../logbook/index.ts";
import type { ChargeLimit } from "./chargeLimit.ts";
import { heatOfFlight, peakIn } from "./heatOfFlight.ts";
import type { ChargeConditions } from "./loggedLoad.ts";
import type { NextFlight } from "./nextFlight.ts";
import {
  colderThanCounted,
  limitNotKnown,
  limitNotReached,
  NO_CONTROLLER_LIMIT,
  NO_HEATING,
  NO_LOADED_CELL_LIMIT,
  NO_PACK_RESISTANCE,
  tooHotWithoutFit,
} from "./sentences.ts";
import { temperatureLimitS } from "./temperatureLimit.ts";
import type { TimerLimit } from "./timerSetting.ts";
import { voltageLimitS } from "./voltageLimit.ts";

/** What the limits beside the charge are reckoned for. */
export interface LimitRequest {
  /** Counted flights, 1 or more. */
  readonly counted: readonly BriefFlight[];
  readonly charge: ChargeLimit;
  readonly conditions: ChargeConditions;
  readonly fitted: Facts;
  readonly next: NextFlight;
}

type Answer = Omit<TimerLimit, "by">;
/** Packs this close in temperature have alike resistances. */
const ALIKE_C = 4;

/** The touchdowns that loaded voltage and controller temperature allow. */
export function otherLimits(request: LimitRequest): readonly TimerLimit[] {
  return [
    { by: "voltage", ...byVoltage(request) },
    { by: "temperature", ...byTemperature(request) },
  ];
}

function notKnown(what: string): Answer {
  return { touchdownByS: null, why: limitNotKnown(what) };
}

function reachedAt(seconds: number | null, flights: readonly string[]): Answer {
  return seconds === null
    ? { touchdownByS: null, why: limitNotReached() }
    : { touchdownByS: Math.floor(seconds), flights: [...new Set(flights)] };
}

/**
 * Amps and ohms as logged: a wrong current gain leaves their product right. Of the next flight's pack where its
 * flights tell, else of all; the largest stands for the coldest.
 */
function byVoltage({ counted, charge, conditions, fitted, next }: LimitRequest): Answer {
  const { cells, minLoadedCellV, chemistry } = fitted.pack;
  if (cells === null || minLoadedCellV === null) return notKnown(NO_LOADED_CELL_LIMIT);
  const measured = counted.filter((entry) => entry.check.measures.packResistance10sMohm.value !== null);
  const ofPack = measured.filter((entry) => next.pack !== null && entry.given.pack === next.pack);
  const used = ofPack.length > 0 ? ofPack : measured;
  if (used.length === 0) return notKnown(NO_PACK_RESISTANCE);
  const { flight, ...coldest } = largestResistance(used);
  const strongest = counted.reduce((most, one) => (peakCurrentOf(one) > peakCurrentOf(most) ? one : most));
  const seconds = voltageLimitS(charge, {
    cells,
    chemistry,
    minLoadedCellV,
    ...coldest,
    peakCurrentA: peakCurrentOf(strongest),
    capacityMah: conditions.capacityMah * conditions.health,
    startShare: conditions.startShare,
  });
  const answer = reachedAt(seconds, [flight, strongest.flight]);
  const caution = colderWords(used, next);
  return caution === null ? answer : { ...answer, why: [answer.why, caution].filter(Boolean).join("; ") };
}

function peakCurrentOf({ load }: BriefFlight): number {
  return load?.peakCurrentA ?? 0;
}

function largestResistance(used: readonly BriefFlight[]) {
  const known = used.flatMap(({ flight, check }) => {
    const { packResistance10sMohm } = check.measures;
    return isKnown(packResistance10sMohm) ? [{ flight, ...packResistance10sMohm }] : [];
  });
  const largest = known.reduce((most, one) => (one.value > most.value ? one : most));
  const halfWidthMohm = highEnd(largest) - largest.value;
  return {
    flight: largest.flight,
    resistance10sOhm: largest.value / 1000,
    resistanceHalfWidthOhm: halfWidthMohm / 1000,
  };
}

/** A colder pack than any counted one sags more than reckoned: said, not guessed. */
function colderWords(used: readonly BriefFlight[], { ambientC }: NextFlight): string | null {
  const known = used.flatMap(({ given }) => given.ambientC ?? []);
  if (ambientC === null || known.length === 0) return null;
  const coldestC = Math.min(...known);
  return ambientC < coldestC - ALIKE_C ? colderThanCounted(coldestC) : null;
}

function byTemperature({ counted, fitted, next }: LimitRequest): Answer {
  const { limitC } = fitted.controller;
  if (limitC === null) return notKnown(NO_CONTROLLER_LIMIT);
  const ambientC = next.ambientC ?? fitted.field.hotDayC;
  let isFitted = false;
  let soonest: { readonly seconds: number; readonly flight: string } | null = null;
  for (const entry of counted) {
    for (const heat of heatOfFlight(entry, ambientC, limitC) ?? []) {
      isFitted = true;
      const seconds = temperatureLimitS(heat);
      if (seconds !== null && (soonest === null || seconds < soonest.seconds)) {
        soonest = { seconds, flight: entry.flight };
      }
    }
  }
  if (!isFitted) return notKnown(unfitWords(counted, ambientC, limitC));
  return reachedAt(soonest?.seconds ?? null, soonest === null ? [] : [soonest.flight]);
}

/** Without a fit nothing can be reckoned ahead, but a flight that was too hot already must be named. */
function unfitWords(counted: readonly BriefFlight[], ambientC: number, limitC: number): string {
  const tooHot = counted.flatMap((entry) => {
    const { controllerHotDayPeakC } = entry.check.measures;
    if (!isKnown(controllerHotDayPeakC)) return [];
    const peakC = peakIn(ambientC, entry.facts.field.hotDayC, controllerHotDayPeakC);
    return peakC >= limitC ? [{ flight: entry.flight, peakC }] : [];
  });
  const first = tooHot[0];
  return first ? tooHotWithoutFit(first.flight, first.peakC, ambientC) : NO_HEATING;
}
