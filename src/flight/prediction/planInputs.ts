import type { Range } from "./range.ts";

/** Every number a plan rests on, by name. */
export const INPUT_NAMES = [
  "powerCoefficient",
  "packMohm",
  "startCellV",
  "lateCellV",
  "density",
  "kv",
  "pathOhm",
  "noLoadA",
  "cruiseShare",
  "capacityMah",
  "groundMah",
  "riseC",
  "riseRatio",
  "risePerA2",
] as const;
export type InputName = (typeof INPUT_NAMES)[number];

/** A range, or why there is none. */
export type Input = Range | { readonly why: string };
export type PlanInputs = { readonly [name in InputName]: Input };

export function isRange(input: Input): input is Range {
  return "value" in input;
}

/** One number per input; NaN where it is missing. */
export type InputValues = { readonly [name in InputName]: number };

export function centreOf(inputs: PlanInputs): InputValues {
  const entries = INPUT_NAMES.map((name) => {
    const input = inputs[name];
    return [name, isRange(input) ? input.value : Number.NaN] as const;
  });
  return Object.fromEntries(entries) as InputValues;
}
