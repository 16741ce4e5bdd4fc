import type { Quantity } from "../../base/quantity/index.ts";
import { median } from "../../base/statistics/index.ts";
import type { LogbookEntry } from "../logbook/index.ts";
import type { RawSeries } from "./rawSeries.ts";
import { HOT_DAY_LIMIT, LOADED_CELL_LIMIT } from "./sentences.ts";
import type { TrendCrossing } from "./trend.ts";

/** Further ahead than this a straight line says nothing, flights. */
const FARTHEST = 100;
/** The last flights that say where the measure stands now. */
const LATEST = 3;

/** The limit that a rising series will meet, and when: only when the whole interval of its slope rises. */
export function crossingOf(raw: RawSeries, slope: Quantity): TrendCrossing | null {
  if (slope.value === null || slope.low === null || slope.high === null || slope.low <= 0) return null;
  const room = roomOf(raw);
  if (room === null || room.growth <= 0) return null;
  const flights = Math.ceil(room.growth / slope.value);
  const latest = Math.ceil(room.growth / slope.low);
  if (latest > FARTHEST) return null;
  const soonest = Math.max(1, Math.floor(room.growth / slope.high));
  return { limit: room.limit, limitValue: room.now + room.growth, flights, soonest, latest };
}

interface Room {
  readonly limit: string;
  /** Where the measure stands, and by how much it may still grow, in its unit. */
  readonly now: number;
  readonly growth: number;
}

function roomOf(raw: RawSeries): Room | null {
  const latest = raw.entries.slice(-LATEST);
  const now = median((raw.variants[0] ?? []).slice(-LATEST));
  if (raw.measure === "controllerRisePerA2") {
    const factor = smallest(latest.map(heatRoomFactor));
    return factor === null ? null : { limit: HOT_DAY_LIMIT, now, growth: now * (factor - 1) };
  }
  if (raw.measure !== "packResistanceMohm") return null;
  const mohm = smallest(latest.map(resistanceRoomMohm));
  return mohm === null ? null : { limit: LOADED_CELL_LIMIT, now, growth: mohm };
}

/** How many times the present heating takes the flight to the limit on the hot day. */
function heatRoomFactor({ check, facts }: LogbookEntry): number | null {
  const peakC = check.measures.controllerHotDayPeakC.value;
  const { limitC } = facts.controller;
  if (peakC === null || limitC === null || peakC <= facts.field.hotDayC) return null;
  return (limitC - facts.field.hotDayC) / (peakC - facts.field.hotDayC);
}

/** Resistance that takes the lowest cell of the flight down to its loaded limit at the same current. */
function resistanceRoomMohm({ check, facts }: LogbookEntry): number | null {
  const { minCellV, peakCurrentA } = check.measures;
  const { cells, minLoadedCellV } = facts.pack;
  if (minCellV.value === null || peakCurrentA.value === null) return null;
  if (cells === null || minLoadedCellV === null) return null;
  return (1000 * cells * (minCellV.value - minLoadedCellV)) / peakCurrentA.value;
}

function smallest(values: readonly (number | null)[]): number | null {
  const known = values.filter((value) => value !== null);
  return known.length === 0 ? null : Math.min(...known);
}
