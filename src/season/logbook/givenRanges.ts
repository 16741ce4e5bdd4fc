import { NUMBER_KEYS } from "../../aircraft/index.ts";

/** Both ends allowed. */
export interface NumberRange {
  readonly low: number;
  readonly high: number;
  readonly unit: string;
}

const { reservePct } = NUMBER_KEYS;
const airC = NUMBER_KEYS["field.ambientC"];

/** What a pilot may say of a flight in numbers, flown or to come: slips of the unit stay out, nothing else. */
export const GIVEN_RANGES = {
  ambientC: { low: airC.low, high: airC.high, unit: "degC" },
  startPct: { low: 1, high: 100, unit: "%" },
  putBackMah: { low: 1, high: 200_000, unit: "mAh" },
  reservePct: { low: reservePct.low, high: reservePct.high, unit: "%" },
} as const satisfies Readonly<Record<string, NumberRange>>;

export type GivenNumber = keyof typeof GIVEN_RANGES;
