import type { Budget } from "./budget.ts";
import type { Facts } from "./facts.ts";

/**
 * Numbers of the starter file that an aircraft could be judged by: of no aircraft in particular, and odd enough
 * that all of a part are not met by chance.
 */
export const EXAMPLE_NUMBERS = {
  controller: { continuousA: 94, burstA: 106, burstS: 9, limitC: 95 },
  motor: { kv: 355, windingOhm: 0.0235, noLoadA: 1.7, maxPowerW: 1450 },
  planned: {
    staticCurrentA: 47,
    staticPowerW: 1030,
    staticRpm: 7900,
    meanCurrentA: 19,
    flightTimeS: 420,
    minCellV: 3.5,
  },
} as const;

export type ExamplePart = keyof typeof EXAMPLE_NUMBERS;

/** Parts of an aircraft file of which every example number still stands: nobody has put in their own. */
export function examplePartsLeft(facts: Facts, { planned }: Budget): readonly ExamplePart[] {
  const given = { controller: facts.controller, motor: facts.motor, planned };
  const parts = Object.keys(EXAMPLE_NUMBERS) as ExamplePart[];
  return parts.filter((part) => {
    const numbers: Readonly<Record<string, unknown>> = { ...given[part] };
    return Object.entries(EXAMPLE_NUMBERS[part]).every(([key, example]) => numbers[key] === example);
  });
}
