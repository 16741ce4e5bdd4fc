import type { PlanConditions } from "../../flight/prediction/index.ts";
import type { Call, OptionDefinition } from "./commandDefinition.ts";
import { givenNumber, keyNumber } from "./knownNumbers.ts";

export const CONDITION_OPTIONS: readonly OptionDefinition[] = [
  { flags: "--ambient <C>", help: "air temperature to plan for, degrees Celsius" },
  { flags: "--elevation <M>", help: "height of the field above sea level, metres" },
];

export function conditionsOf(call: Call, reservePct: number): PlanConditions {
  return {
    ambientC: givenNumber(call, "ambient", "ambientC"),
    elevationM: keyNumber(call, "elevation", "field.elevationM", "120"),
    reservePct,
  };
}
