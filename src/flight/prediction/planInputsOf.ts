import type { Facts } from "../../aircraft/facts.ts";
import { leftOutRuns } from "../analysis/index.ts";
import { carriedOver } from "./carriedOver.ts";
import { chosenCoefficient } from "./chosenCoefficient.ts";
import type { PlanConditions } from "./conditions.ts";
import { type Coupling, ownDoubt } from "./coupling.ts";
import { shapeOf } from "./flownPropellers.ts";
import { heatInputs } from "./heatInputs.ts";
import type { KnownParts } from "./knownParts.ts";
import { partInputs } from "./partInputs.ts";
import { centreOf, type Input, type PlanInputs } from "./planInputs.ts";
import { frameOf, type PlanFrame } from "./planModel.ts";
import { referenceOf } from "./reference.ts";
import { NO_PROPELLER_SIZE } from "./sentences.ts";

export interface PreparedPlan {
  readonly inputs: PlanInputs;
  readonly frame: PlanFrame;
  readonly coupling: Coupling | null;
  /** On flights that do not count and on the propeller's coefficient. */
  readonly remarks: readonly string[];
}

/** Every input of a plan, each from the best source there is. */
export function preparedPlan(facts: Facts, known: KnownParts, conditions: PlanConditions): PreparedPlan {
  const shape = shapeOf(facts);
  const coefficient = shape === null ? null : chosenCoefficient(shape, known);
  const powerCoefficient: Input = coefficient ?? { why: NO_PROPELLER_SIZE };
  const parts = { ...partInputs(facts, known, conditions), powerCoefficient };
  const reference = referenceOf(facts, known);
  const driver = known.controller?.driver ?? null;
  const carried = carriedOver(parts, facts, reference, known, conditions, driver);
  const heat = heatInputs(known, reference, carried.loads);
  const { driver: heatDriver, ...heatRanges } = heat;
  const whole = { ...parts, cruiseShare: carried.cruiseShare, ...heatRanges };
  const coupling = couplingOf(facts, known, coefficient?.isMeasured ?? false);
  const inputs =
    coefficient?.isMeasured && coupling
      ? { ...whole, powerCoefficient: ownDoubt(coefficient, whole, centreOf(whole), coupling) }
      : whole;
  return {
    inputs,
    coupling,
    frame: frameOf(facts, conditions.reservePct, heatDriver),
    remarks: [...leftOutRuns(known.leftOut), ...(coefficient?.remarks ?? [])],
  };
}

function couplingOf({ motor }: Facts, known: KnownParts, isCoefficientMeasured: boolean): Coupling | null {
  if (known.fullThrottle === null) return null;
  const isKvMeasured = known.kv !== null && motor.kv !== null;
  return { point: known.fullThrottle, isKvMeasured, isCoefficientMeasured };
}
