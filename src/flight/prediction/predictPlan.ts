import type { Facts } from "../../aircraft/facts.ts";
import { between, type Quantity, unknown } from "../../base/quantity/index.ts";
import { MEASURE_UNITS } from "../analysis/index.ts";
import type { PlanConditions } from "./conditions.ts";
import type { KnownParts } from "./knownParts.ts";
import { type InputName, isRange, type PlanInputs } from "./planInputs.ts";
import { type PreparedPlan, preparedPlan } from "./planInputsOf.ts";
import { PLAN_MEASURES, type PlanFrame, type PlanMeasure } from "./planModel.ts";
import { type Ends, propagated } from "./propagated.ts";
import { CANNOT_TURN, LATE_FULL_THROTTLE, NO_CELLS, NO_MASS, TO_THE_RESERVE } from "./sentences.ts";
import { staticThrustN } from "./thrust.ts";
import { whyNoEnds } from "./tooWide.ts";

export type PlanMeasures = { readonly [name in PlanMeasure]: Quantity };

/** Parts whose source a plan tells, with words like "measured in 3 flights". */
export const BASIS_NAMES = {
  propellerPowerCoefficient: "powerCoefficient",
  packResistanceMohm: "packMohm",
  startCellV: "startCellV",
  lateCellV: "lateCellV",
  airDensity: "density",
  kv: "kv",
  pathOhm: "pathOhm",
  noLoadA: "noLoadA",
  cruiseShare: "cruiseShare",
  capacityMah: "capacityMah",
  groundChargeMah: "groundMah",
  controllerRise: "riseC",
  controllerRisePerA2: "risePerA2",
} as const satisfies Record<string, InputName>;

export type BasisOf = Readonly<Partial<Record<keyof typeof BASIS_NAMES, string>>>;

export interface PlanPrediction {
  readonly measures: PlanMeasures;
  readonly staticThrustN: Quantity;
  readonly basisOf: BasisOf;
  readonly inputs: PlanInputs;
  readonly remarks: readonly string[];
}

/**
 * The power budget that follows from what is fitted, each measure with a 95 % interval; null with the reason where
 * facts are missing. Static measures are those of full throttle on the ground with a full pack.
 */
export function predictPlan(facts: Facts, known: KnownParts, conditions: PlanConditions): PlanPrediction {
  const plan = preparedPlan(facts, known, conditions);
  const { inputs, remarks } = plan;
  const ends = propagated(inputs, plan.frame, plan.coupling);
  const pairs = PLAN_MEASURES.map((name) => [name, measureOf(name, ends[name], plan)] as const);
  const measures = Object.fromEntries(pairs) as PlanMeasures;
  const thrust = staticThrustN(facts, measures.staticRpm, inputs);
  return { measures, staticThrustN: thrust, basisOf: basisOf(inputs), inputs, remarks };
}

const STATIC: readonly InputName[] = [
  "powerCoefficient",
  "packMohm",
  "startCellV",
  "density",
  "kv",
  "pathOhm",
  "noLoadA",
];

/** What each measure needs, in the order in which a missing fact is told. */
const NEEDS: { readonly [name in PlanMeasure]: readonly InputName[] } = {
  staticCurrentA: STATIC,
  staticRpm: STATIC,
  staticPowerW: STATIC,
  minCellV: [...STATIC, "lateCellV"],
  sagPerCellV: STATIC,
  meanCurrentA: [...STATIC, "cruiseShare"],
  flightTimeS: [...STATIC, "cruiseShare", "capacityMah", "groundMah"],
  controllerHotDayPeakC: ["risePerA2", ...STATIC, "cruiseShare"],
  powerLoadingWPerKg: STATIC,
};

const REMARKS: Readonly<Partial<Record<PlanMeasure, string>>> = {
  minCellV: LATE_FULL_THROTTLE,
  flightTimeS: TO_THE_RESERVE,
};

function measureOf(name: PlanMeasure, { value, low, high }: Ends, { inputs, frame }: PreparedPlan): Quantity {
  const unit = MEASURE_UNITS[name];
  if (Number.isNaN(value)) return unknown(unit, whyNot(name, inputs, frame));
  if (!Number.isFinite(low) || !Number.isFinite(high)) return unknown(unit, whyNoEnds(NEEDS[name], inputs));
  const why = REMARKS[name];
  const least = Math.max(low, 0);
  return between(value, least, high, unit, "predicted", why === undefined ? {} : { why });
}

function whyNot(name: PlanMeasure, inputs: PlanInputs, frame: PlanFrame): string {
  if (Number.isNaN(frame.cells)) return NO_CELLS;
  for (const need of NEEDS[name]) {
    const input = inputs[need];
    if (!isRange(input)) return input.why;
  }
  if (name === "powerLoadingWPerKg" && Number.isNaN(frame.massKg)) return NO_MASS;
  return CANNOT_TURN;
}

function basisOf(inputs: PlanInputs): BasisOf {
  const known = Object.entries(BASIS_NAMES).flatMap(([key, name]) => {
    const input = inputs[name];
    return isRange(input) ? [[key, input.basis] as const] : [];
  });
  return Object.fromEntries(known);
}
