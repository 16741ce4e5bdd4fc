import type { Facts } from "../../aircraft/facts.ts";
import { openCircuitCellV, resistanceRatio } from "../../physics/index.ts";
import type { PlanConditions } from "./conditions.ts";
import type { KnownParts } from "./knownParts.ts";
import { type Input, isRange } from "./planInputs.ts";
import { aboutRange, type Range, scaledRange } from "./range.ts";
import {
  AIRCRAFT_FILE,
  COMMON_PRACTICE,
  NO_CAPACITY,
  NO_CELLS,
  perCellAndCapacity,
  REST_CURVES,
  scaledFrom,
  USUAL_FULL_CELL,
} from "./sentences.ts";

/** A pack holds its rated capacity within this (common practice, no published source). */
const CAPACITY_STATED = 0.05;
/**
 * A stated pack resistance is that of a warm, new pack after a second or less; a load of ten seconds sees more
 * (common practice, no published source).
 */
const STATED_TO_TEN_SECONDS = { value: 1.2, low: 0.95, high: 1.6 } as const;
/** Per cell, mohm times Ah, ten seconds into a load (common practice, no published source). */
const CELL_MOHM_AH = { value: 20, low: 8, high: 40 } as const;
/** A pack of other cells or capacity but the same make: resistance per cell and Ah within this (our choice). */
const OTHER_PACK = 0.15;
/**
 * Per cell, V: what a run-up takes off a full cell before its full throttle is read, 0 to 3 % of the charge at
 * 10 mV per percent (community rest table; pouch cell of Ecker et al. 2015).
 */
const RUN_UP_DROP_V = 0.015;
/** Below the charger's full voltage a cell settles by some hundredths (common practice, no published source). */
const FULL_CELL_BELOW_V = 0.04;
const FULL_CELL_ABOVE_V = 0.01;
/** Run-up, taxi and standby, share of the capacity (common practice, no published source). */
const GROUND_SHARE = { value: 0.03, low: 0.01, high: 0.07 } as const;
/** A pack is taken as about this warm; on a colder day it may be as cold as the air, which only raises its resistance. */
const USUAL_PACK_C = 20;

/** Resistance, volts and charge of the pack: measured where logs give them, else stated, else common practice. */
export function packInputs(
  facts: Facts,
  known: KnownParts,
  conditions: PlanConditions,
): {
  readonly packMohm: Input;
  readonly startCellV: Input;
  readonly lateCellV: Input;
  readonly capacityMah: Input;
  readonly groundMah: Input;
} {
  return {
    packMohm: packMohm(facts, known, conditions),
    startCellV: startCellV(facts, known),
    lateCellV: lateCellV(facts, conditions.reservePct),
    ...chargeInputs(facts, known),
  };
}

/** Pack resistance ten seconds into a load, for the day asked for. */
function packMohm(facts: Facts, known: KnownParts, { ambientC }: PlanConditions): Input {
  const input = usualPackMohm(facts, known);
  if (!isRange(input) || ambientC === null || ambientC >= USUAL_PACK_C) return input;
  const colder = resistanceRatio(ambientC, USUAL_PACK_C).value - 1;
  const above = Math.hypot(input.high / input.value - 1, colder);
  return { ...input, high: input.value * (1 + above) };
}

function usualPackMohm({ pack }: Facts, known: KnownParts): Input {
  const measured = known.pack?.resistance10sMohm;
  if (measured && known.pack && pack.cells !== null) {
    const factor = packFactor(pack, known.pack);
    if (factor === 1) return measured;
    const basis = scaledFrom(measured.basis);
    const low = Math.max(0.1, 1 - Math.hypot(1 - measured.low / measured.value, OTHER_PACK));
    const high = 1 + Math.hypot(measured.high / measured.value - 1, OTHER_PACK);
    return scaledRange(measured.value * factor, low, high, basis);
  }
  const { value, low, high } = STATED_TO_TEN_SECONDS;
  if (pack.resistanceMohm !== null && pack.resistanceMohm > 0) {
    return scaledRange(pack.resistanceMohm * value, low / value, high / value, AIRCRAFT_FILE);
  }
  if (pack.cells === null) return { why: NO_CELLS };
  if (pack.capacityMah === null) return { why: NO_CAPACITY };
  const perUnit = (1000 * pack.cells) / pack.capacityMah;
  const practice = CELL_MOHM_AH;
  return {
    value: practice.value * perUnit,
    low: practice.low * perUnit,
    high: practice.high * perUnit,
    basis: perCellAndCapacity(),
  };
}

/** Resistance goes with the cells in series and against the capacity. */
function packFactor(
  pack: Facts["pack"],
  logged: { readonly cells: number; readonly capacityMah: number | null },
): number {
  const capacity =
    pack.capacityMah !== null && logged.capacityMah !== null ? logged.capacityMah / pack.capacityMah : 1;
  return ((pack.cells ?? logged.cells) / logged.cells) * capacity;
}

function startCellV({ pack }: Facts, known: KnownParts): Input {
  const measured = known.pack?.startCellV;
  if (measured) return startCellInput(measured);
  const value = pack.fullCellV - RUN_UP_DROP_V;
  return {
    value,
    low: value - Math.hypot(FULL_CELL_BELOW_V, RUN_UP_DROP_V),
    high: value + Math.hypot(FULL_CELL_ABOVE_V, RUN_UP_DROP_V),
    basis: USUAL_FULL_CELL,
  };
}

/** Open-circuit volts of a cell at full throttle, from its rest before the run-up. */
export function startCellInput(rest: Range): Range {
  const halfWidth = Math.hypot(rest.high - rest.value, RUN_UP_DROP_V);
  return aboutRange(rest.value - RUN_UP_DROP_V, halfWidth, rest.basis);
}

/** Open-circuit volts of a cell with the charge down to the reserve: the published curves' band. */
function lateCellV({ pack }: Facts, reservePct: number): Input {
  return { ...openCircuitCellV(reservePct, pack.chemistry), basis: REST_CURVES };
}

function chargeInputs(
  { pack }: Facts,
  known: KnownParts,
): { readonly capacityMah: Input; readonly groundMah: Input } {
  if (pack.capacityMah === null)
    return { capacityMah: { why: NO_CAPACITY }, groundMah: { why: NO_CAPACITY } };
  const capacity = (pack.capacityMah * pack.healthPct) / 100;
  const { value, low, high } = GROUND_SHARE;
  return {
    capacityMah: scaledRange(capacity, 1 - CAPACITY_STATED, 1 + CAPACITY_STATED, AIRCRAFT_FILE),
    groundMah:
      known.groundChargeMah ?? scaledRange(capacity * value, low / value, high / value, COMMON_PRACTICE),
  };
}
