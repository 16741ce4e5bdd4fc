import type { Facts } from "../../aircraft/facts.ts";
import type { HeatDriver } from "../analysis/index.ts";
import { chosenCoefficient } from "./chosenCoefficient.ts";
import type { PlanConditions } from "./conditions.ts";
import { cruiseShareInput } from "./cruise.ts";
import type { HeatingLoads } from "./heatInputs.ts";
import type { KnownParts } from "./knownParts.ts";
import { partInputs } from "./partInputs.ts";
import { centreOf, type Input, type InputValues, isRange, type PlanInputs } from "./planInputs.ts";
import { frameOf, fullThrottle, heatingA2, type PlanFrame } from "./planModel.ts";
import type { Reference } from "./reference.ts";
import { NOT_USED } from "./sentences.ts";

export interface CarriedOver {
  readonly cruiseShare: Input;
  readonly loads: HeatingLoads | null;
}

/** The inputs that do not depend on flights of another fitting. */
export type Parts = Omit<PlanInputs, "cruiseShare" | "riseC" | "riseRatio" | "risePerA2">;

/** What the flights of the logged fitting say about this one: cruise and heating in proportion to the load. */
export function carriedOver(
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
  const share = logged.values.cruiseShare;
  const at = (cruiseShare: number, values = asked.values) =>
    heatingA2({ ...values, cruiseShare }, asked.frame, fullThrottle(values, asked.frame, values.startCellV));
  const coefficient = parts.powerCoefficient;
  const atCoefficient = (powerCoefficient: number) => at(share, { ...asked.values, powerCoefficient });
  return {
    cruiseShare,
    loads: {
      logged: heatingA2(logged.values, logged.frame, loggedFull),
      samePower: at((share * loggedFull.packPowerW) / full.packPowerW),
      sameShare: at(share),
      ofCoefficient: isRange(coefficient) ? [coefficient.low, coefficient.high].map(atCoefficient) : [],
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
