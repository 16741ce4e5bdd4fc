import { NUMBER_KEYS, type NumberKeyPath } from "../../aircraft/index.ts";
import { GIVEN_RANGES, type GivenNumber } from "../../season/logbook/index.ts";
import type { Call } from "./commandDefinition.ts";
import { numberOption } from "./optionValues.ts";

const EXAMPLES: Readonly<Record<GivenNumber, { readonly unit: string; readonly example: string }>> = {
  ambientC: { unit: "degrees Celsius", example: "24" },
  startPct: { unit: "percent", example: "90" },
  putBackMah: { unit: "mAh", example: "2450" },
  reservePct: { unit: "percent", example: "25" },
};

/** What a pilot says of a flight in a number, in its range; null without the option. */
export function givenNumber(call: Call, option: string, name: GivenNumber): number | null {
  return numberOption(call, option, { ...GIVEN_RANGES[name], ...EXAMPLES[name] });
}

/** A number that the aircraft file could hold at a key, in that key's range; null without the option. */
export function keyNumber(call: Call, option: string, path: NumberKeyPath, example: string): number | null {
  const key = NUMBER_KEYS[path];
  const unit = key.unit === "m" ? "metres" : key.unit;
  return numberOption(call, option, { ...key, unit, example });
}
