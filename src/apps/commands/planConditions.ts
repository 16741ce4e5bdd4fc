import type { PlanConditions } from "../../flight/prediction/index.ts";
import type { Call, OptionDefinition } from "./commandDefinition.ts";
import { numberOption } from "./optionValues.ts";

export const CONDITION_OPTIONS: readonly OptionDefinition[] = [
  { flags: "--ambient <C>", help: "air temperature to plan for, degrees Celsius" },
  { flags: "--elevation <M>", help: "height of the field above sea level, metres" },
];

export function conditionsOf(call: Call, reservePct: number): PlanConditions {
  return {
    ambientC: numberOption(call, "ambient", { low: -40, high: 60, unit: "degrees Celsius", example: "24" }),
    elevationM: numberOption(call, "elevation", { low: -500, high: 6000, unit: "metres", example: "120" }),
    reservePct,
  };
}
