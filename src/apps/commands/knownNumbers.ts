import { NUMBER_KEYS, type NumberKeyPath } from "../../aircraft/index.ts";
import { GIVEN_RANGES, type GivenNumber } from "../../season/logbook/index.ts";
import type { Call } from "./commandDefinition.ts";
import { numberOption } from "./optionValues.ts";

const EXAMPLES: Readonly<Record<GivenNumber, string>> = {
  ambientC: "24",
  startPct: "90",
  putBackMah: "2450",
  reservePct: "25",
};

/** Units as a sentence says them; others stay as they are. */
const UNIT_WORDS: Readonly<Record<string, string>> = { degC: "degrees Celsius", "%": "percent", m: "metres" };

/** What a pilot says of a flight in a number, in its range; null without the option. */
export function givenNumber(call: Call, option: string, name: GivenNumber): number | null {
  const range = GIVEN_RANGES[name];
  return numberOption(call, option, { ...range, unit: wordsOf(range.unit), example: EXAMPLES[name] });
}

/** A number that the aircraft file could hold at a key, in that key's range; null without the option. */
export function keyNumber(call: Call, option: string, path: NumberKeyPath, example: string): number | null {
  const key = NUMBER_KEYS[path];
  return numberOption(call, option, { ...key, unit: wordsOf(key.unit), example });
}

function wordsOf(unit: string): string {
  return UNIT_WORDS[unit] ?? unit;
}
