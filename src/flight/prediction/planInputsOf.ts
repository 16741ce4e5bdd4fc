import type { Facts } from "../../aircraft/facts.ts";
import type { HeatDriver } from "../analysis/index.ts";
import { chosenCoefficient } from "./chosenCoefficient.ts";
import type { PlanConditions } from "./conditions.ts";
import { type Coupling, ownDoubt } from "./coupling.ts";
import { cruiseShareInput } from "./cruise.ts";
import { shapeOf } from "./flownPropellers.ts";
import { type HeatingLoads, heatInputs } from "./heatInputs.ts";
import type { KnownParts } from "./knownParts.ts";
import { partInputs } from "./partInputs.ts";
import { centreOf, type Input, type InputValues, isRange, type PlanInputs } from "./planInputs.ts";
import { frameOf, fullThrottle, heatingA2, type PlanFrame } from "./planModel.ts";
import { type Reference, referenceOf } from "./reference.ts";
import { NO_PROPELLER_SIZE, NOT_USED } from "./sentences.ts";

export interface PreparedPlan {
  readonly inputs: PlanInputs;
  readonly frame: PlanFrame;
  readonly coupling: Coupling | null;
  /** On the propeller's coefficient. */
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
    remarks: coefficient?.remarks ?? [],
  };
}

function couplingOf({ motor }: Facts, known: KnownParts, isCoefficientMeasured: boolean): Coupling | null {
  if (known.fullThrottle === null) return null;
  const isKvMeasured = known.kv !== null && motor.kv !== null;
  return { point: known.fullThrottle, isKvMeasured, isCoefficientMeasured };
}

interface CarriedOver {
  readonly cruiseShare: Input;
  readonly loads: HeatingLoads | null;
}

type Parts = Omit<PlanInputs, "cruiseShare" | "riseC" | "riseRatio" | "risePerA2">;

/** What the flights of the logged fitting say about this one: cruise and heating in proportion to the load. */
function carriedOver(
  parts: Parts,
  facts: Facts,
  reference: Reference | null,
  known: KnownParts,
  conditions: PlanConditions,
  driver: HeatDriver | null,
): CarriedOver {
  if (reference === null || reference.isSame)
    return { cruiseShare: cruiseShareInput(reference, 1), loads: null };
  const logged = loggedSide(reference, known, conditions);
  const asked = {
    values: withShare(parts, Number.NaN),
    frame: frameOf(facts, conditions.reservePct, driver),
  };
  const full = fullThrottle(asked.values, asked.frame, asked.values.startCellV);
  const loggedFull = logged && fullThrottle(logged.values, logged.frame, logged.values.startCellV);
  if (full === null || !loggedFull || logged === null)
    return { cruiseShare: cruiseShareInput(reference, Number.NaN), loads: null };
  const cruiseShare = cruiseShareInput(reference, loggedFull.packPowerW / full.packPowerW);
  const at = (share: number) => heatingA2({ ...asked.values, cruiseShare: share }, asked.frame, full);
  const share = logged.values.cruiseShare;
  return {
    cruiseShare,
    loads: {
      logged: heatingA2(logged.values, logged.frame, loggedFull),
      samePower: at((share * loggedFull.packPowerW) / full.packPowerW),
      sameShare: at(share),
    },
  };
}

function loggedSide(
  reference: Reference,
  known: KnownParts,
  conditions: PlanConditions,
): { readonly values: InputValues; readonly frame: PlanFrame } | null {
  const { shape, cruiseShare } = reference.flown;
  if (shape === null) return null;
  const parts = {
    ...partInputs(reference.facts, known, conditions),
    powerCoefficient: chosenCoefficient(shape, known),
  };
  const share = cruiseShareInput({ ...reference, isSame: true }, 1);
  return {
    values: withShare(parts, isRange(share) ? share.value : (cruiseShare?.value ?? Number.NaN)),
    frame: frameOf(reference.facts, conditions.reservePct, known.controller?.driver ?? null),
  };
}

function withShare(parts: Parts, share: number): InputValues {
  const none: Input = { why: NOT_USED };
  const inputs = { ...parts, cruiseShare: none, riseC: none, riseRatio: none, risePerA2: none };
  return { ...centreOf(inputs), cruiseShare: share };
}
