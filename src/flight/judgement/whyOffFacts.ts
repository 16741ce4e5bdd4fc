import type { Facts } from "../../aircraft/facts.ts";
import { isKnown, type Quantity } from "../../base/quantity/index.ts";
import { openCircuitCellV } from "../../physics/index.ts";
import type { DayFacts, Measures } from "../analysis/index.ts";
import {
  type Input,
  isRange,
  knownPartsFrom,
  type PlanInputs,
  preparedPlan,
  type Range,
  startCellInput,
} from "../prediction/index.ts";
import type { WhyOffFact } from "./whyOff.ts";
import type { OffValues } from "./whyOffLines.ts";
import { NO_AIR_OF_DAY, NOT_IN_THIS_LOG } from "./whyOffSentences.ts";

/** The flight whose plan is looked into. */
export interface MeasuredFlight {
  readonly kind: "flight" | "benchRun";
  readonly complete: boolean;
  readonly measures: Measures;
  readonly facts: Facts;
  readonly day: DayFacts;
}

/** Values with one fact replaced: by the measured number and by either end of its interval; or why not. */
export type Replaced =
  | { readonly value: OffValues; readonly low: OffValues; readonly high: OffValues; readonly why: null }
  | { readonly why: string };

/** How each fact is replaced by what this flight measured. */
export function replacements(flight: MeasuredFlight): (fact: WhyOffFact, base: OffValues) => Replaced {
  const { kind, complete, measures, facts, day } = flight;
  const known = knownPartsFrom([{ kind, complete, measures, facts }]);
  const conditions = { ambientC: day.ambientC, elevationM: null, reservePct: 0 };
  const { inputs } = preparedPlan(facts, known, conditions);
  const propeller = known.flown[0];
  const ranges: { readonly [fact in Exclude<WhyOffFact, "timeFlown">]: Measured } = {
    propellerPowerCoefficient: measured("powerCoefficient", propeller?.powerCoefficient),
    packResistance: measured("packMohm", known.pack?.resistance10sMohm),
    startVoltage: measured("startCellV", startOf(measures)),
    airDensity:
      day.ambientC === null
        ? { name: "density", input: { why: NO_AIR_OF_DAY } }
        : { name: "density", input: inputs.density },
    motorConstants: measured("kv", known.kv),
    cruiseShare: measured("cruiseShare", propeller?.cruiseShare),
    groundCharge: measured("groundMah", known.groundChargeMah),
    chargeLeft: measured("lateCellV", leftOf(measures, facts)),
  };
  return (fact, base) => {
    if (fact === "timeFlown") return flown(base, measures.flightTimeS);
    const { name, input } = ranges[fact];
    if (!isRange(input)) return { why: input.why };
    const at = (value: number): OffValues => ({ ...base, inputs: { ...base.inputs, [name]: value } });
    return { value: at(input.value), low: at(input.low), high: at(input.high), why: null };
  };
}

interface Measured {
  readonly name: keyof PlanInputs;
  readonly input: Input;
}

function measured(name: keyof PlanInputs, range: Range | null | undefined): Measured {
  return { name, input: range ?? { why: NOT_IN_THIS_LOG } };
}

function startOf({ restCellV }: Measures): Range | null {
  const range = rangeOf(restCellV);
  return range === null ? null : startCellInput(range);
}

/** Open-circuit volts at the charge left at the end, as wide as both the charge and the curves leave them. */
function leftOf({ chargeLeftPct }: Measures, { pack }: Facts): Range | null {
  const left = rangeOf(chargeLeftPct);
  if (left === null) return null;
  return {
    value: openCircuitCellV(left.value, pack.chemistry).value,
    low: openCircuitCellV(left.low, pack.chemistry).low,
    high: openCircuitCellV(left.high, pack.chemistry).high,
    basis: left.basis,
  };
}

function flown(base: OffValues, time: Quantity): Replaced {
  const range = rangeOf(time);
  if (range === null) return { why: NOT_IN_THIS_LOG };
  const at = (flownS: number): OffValues => ({ ...base, flownS });
  return { value: at(range.value), low: at(range.low), high: at(range.high), why: null };
}

function rangeOf(quantity: Quantity): Range | null {
  if (!isKnown(quantity) || quantity.low === null || quantity.high === null) return null;
  const { value, low, high } = quantity;
  return { value, low, high, basis: "measured" };
}
