import type { Budget, Planned } from "../../aircraft/budget.ts";
import type { Facts } from "../../aircraft/facts.ts";
import type { MeasureName } from "../analysis/index.ts";
import type { Judgement } from "./judgement.ts";
import { plannedForOther } from "./propellerWords.ts";

/** A number to hold a measure against; `value` null: the aircraft file does not give it. */
export interface Criterion {
  readonly line: MeasureName;
  readonly against: Judgement["against"];
  readonly sense: Judgement["sense"];
  readonly value: number | null;
  /** Key of the aircraft file. */
  readonly source: string;
  /** What the number is, in words: "the controller's burst limit". */
  readonly words: string;
  /** On the good side of a limit but nearer than this is `close`; 0 for the plan. In the measure's unit. */
  readonly closeMargin: number;
  /** What the reader must know of the number, in words: "made for the 18x10, not the 18x8". */
  readonly remark?: string;
}

/** Nearer than this share of a limit in amperes, watts or rev/min is close. */
const CLOSE_SHARE = 0.1;
const CLOSE_TEMPERATURE_C = 5;
const CLOSE_CELL_V = 0.05;

const PLAN_SENSES: { readonly [line in keyof Planned]: Judgement["sense"] } = {
  staticCurrentA: "around",
  staticPowerW: "around",
  staticRpm: "around",
  meanCurrentA: "atMost",
  flightTimeS: "atLeast",
  chargeUsedMah: "atMost",
  minCellV: "atLeast",
  controllerPeakC: "atMost",
};

/** The planned lines that the pilot gave, and the reserve where a known capacity lets it be judged. */
export function planCriteria(facts: Facts, budget: Budget): readonly Criterion[] {
  return [...plannedLines(facts, budget), ...(facts.pack.capacityMah === null ? [] : [reserve(budget)])];
}

/** Key of the aircraft file; where the file is silent the usual reserve counts. */
export const RESERVE_SOURCE = "reservePct";

function reserve({ reservePct }: Budget): Criterion {
  return {
    line: "chargeLeftPct",
    against: "plan",
    sense: "atLeast",
    value: reservePct,
    source: RESERVE_SOURCE,
    words: "the reserve",
    closeMargin: 0,
  };
}

function plannedLines(facts: Facts, budget: Budget): readonly Criterion[] {
  const remark = otherPropeller(facts, budget);
  return (Object.keys(PLAN_SENSES) as (keyof Planned)[])
    .filter((line) => budget.planned[line] !== null)
    .map((line) => ({
      line,
      against: "plan",
      sense: PLAN_SENSES[line],
      value: budget.planned[line],
      source: `planned.${line}`,
      words: "the plan",
      closeMargin: 0,
      ...(remark === null ? {} : { remark }),
    }));
}

/** A plan made for another propeller than the one flown is judged all the same, but never in silence. */
function otherPropeller({ propeller }: Facts, { plannedFor }: Budget): string | null {
  const { diameterIn, pitchIn, blades } = propeller;
  if (!plannedFor || diameterIn === null || pitchIn === null) return null;
  const isSame =
    diameterIn === plannedFor.diameterIn && pitchIn === plannedFor.pitchIn && blades === plannedFor.blades;
  return isSame ? null : plannedForOther(plannedFor, { diameterIn, pitchIn, blades });
}

/** Every limit that a measure can be held against, given in the aircraft file or not. */
export function limitCriteria(facts: Facts): readonly Criterion[] {
  return [...currentLimits(facts), ...loadLimits(facts), ...temperatureLimits(facts), cellLimit(facts)];
}

function currentLimits(facts: Facts): readonly Criterion[] {
  const { continuousA, burstA, burstS } = facts.controller;
  const burst =
    burstA === null
      ? share("peakCurrentA", continuousA, "controller.continuousA", "the controller's continuous rating")
      : share("peakCurrentA", burstA, "controller.burstA", "the controller's burst limit");
  const pack = share(
    "peakCurrentA",
    facts.pack.maxContinuousA,
    "pack.maxContinuousA",
    "the pack's continuous rating",
  );
  if (burstA === null || continuousA === null) return [burst, pack];
  const stretch: Criterion = {
    line: "longestOverRatingS",
    against: "limit",
    sense: "atMost",
    value: burstS,
    source: "controller.burstS",
    words: "the time the controller may run over its rating",
    closeMargin: 0,
  };
  return [burst, stretch, pack];
}

function loadLimits(facts: Facts): readonly Criterion[] {
  const { maxPowerW, count } = facts.motor;
  const power = maxPowerW === null ? null : maxPowerW * count;
  return [
    share("peakPowerW", power, "motor.maxPowerW", "the motor's power limit"),
    share("peakRpm", facts.propeller.maxRpm, "propeller.maxRpm", "the propeller's speed limit"),
  ];
}

function temperatureLimits(facts: Facts): readonly Criterion[] {
  const controller = facts.controller.limitC;
  return [
    temperature("controllerPeakC", controller, "controller.limitC", "the controller's limit"),
    temperature("controllerHotDayPeakC", controller, "controller.limitC", "the controller's limit"),
    temperature("motorPeakC", facts.motor.limitC, "motor.limitC", "the motor's limit"),
    temperature("packPeakC", facts.pack.limitC, "pack.limitC", "the pack's limit"),
  ];
}

function cellLimit(facts: Facts): Criterion {
  return {
    line: "minCellV",
    against: "limit",
    sense: "atLeast",
    value: facts.pack.minLoadedCellV,
    source: "pack.minLoadedCellV",
    words: "the lowest loaded cell voltage",
    closeMargin: CLOSE_CELL_V,
  };
}

function share(line: MeasureName, value: number | null, source: string, words: string): Criterion {
  const closeMargin = value === null ? 0 : CLOSE_SHARE * value;
  return { line, against: "limit", sense: "atMost", value, source, words, closeMargin };
}

function temperature(line: MeasureName, value: number | null, source: string, words: string): Criterion {
  return {
    line,
    against: "limit",
    sense: "atMost",
    value,
    source,
    words,
    closeMargin: CLOSE_TEMPERATURE_C,
  };
}
