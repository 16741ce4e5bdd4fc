import type { ExamplePart } from "../../aircraft/index.ts";
import {
  isKnown,
  lengthInWords,
  plainNumber,
  type Quantity,
  quantityText,
  unitText,
} from "../../base/quantity/index.ts";
import { capital, uncapital } from "../../base/words/index.ts";
import type { measuredShapes } from "../../physics/index.ts";
import { MEASURE_WORDS, type MeasureName } from "../analysis/index.ts";
import type { BasisOf, InchStep } from "../prediction/index.ts";
import type { Judgement } from "./judgement.ts";
import { clearly } from "./sentences.ts";

/** "8:24 min (6:30 to 11:10)" for times, else as any quantity. */
export function predictedText(quantity: Quantity): string {
  if (!isKnown(quantity) || quantity.unit !== "s" || quantity.low === null || quantity.high === null) {
    return quantityText(quantity);
  }
  const { value, low, high } = quantity;
  return `${lengthInWords(value)} (${lengthInWords(low)} to ${lengthInWords(high)})`;
}

export function predictedPart(name: MeasureName, quantity: Quantity): string {
  return `${MEASURE_WORDS[name]} ${predictedText(quantity)}`;
}

/** "The plan itself: 55 A planned, 44 A (36 to 52 A) predicted for static current." */
export function planItself(judgement: Judgement): string {
  const { line, value, measured } = judgement;
  const planned = value === null ? "" : plannedText(value, measured.unit);
  return `the plan itself is off: ${planned} planned, ${predictedText(measured)} predicted for ${MEASURE_WORDS[line]}`;
}

function plannedText(value: number, unit: string): string {
  return unit === "s" ? lengthInWords(value) : `${plainNumber(value)} ${unitText(unit)}`;
}

/** @param also measures beyond their limits too; @param close measures close to theirs */
export function limitWouldPass(
  judgement: Judgement,
  also: readonly string[],
  close: readonly string[],
): string {
  const others = [
    ...(also.length === 0 ? [] : [`passed too: ${also.join(", ")}`]),
    ...(close.length === 0 ? [] : [`close: ${close.join(", ")}`]),
  ];
  const more = others.length === 0 ? "" : ` (${others.join("; ")})`;
  return `a limit would be passed: ${clause(judgement)}${more}`;
}

export function limitNear(judgement: Judgement, also: readonly string[]): string {
  const more = also.length === 0 ? "" : ` (close too: ${also.join(", ")})`;
  return `no limit is ${clearly(judgement)}passed, but ${clause(judgement)}${more}`;
}

export function allLimitsHeld(count: number): string {
  if (count === 0) return "the aircraft file gives no limit to hold it against";
  return count === 1
    ? "the one limit that could be judged is held"
    : `the ${count} limits that could be judged are held`;
}

/** @param share of the weight, dimensionless: the upper end of the estimate */
export function hardlyLifts(share: number): string {
  return `static thrust of at most ${share.toFixed(2)} of the weight hardly lifts it: check the propeller`;
}

export function exampleNumbers(parts: readonly ExamplePart[]): string {
  return `this rests on the example numbers still in the aircraft file (${parts.join(", ")}): put in your own`;
}

export const PLANNED_NUMBERS_AGREE = "the planned numbers agree with it";
export const PLAN_NOT_FAULTED = "no planned number lies outside it, but it is too wide to confirm them all";
export const NOTHING_PREDICTED = "nothing can be predicted";
export const NO_MAIN_NUMBERS = "static current and flight time cannot be predicted";

/** "Rests on: power coefficient measured in 3 flights; pack resistance aircraft file." */
export function restsOn(basisOf: BasisOf): string {
  const parts = BASIS_SHOWN.flatMap(([key, words]) => {
    const basis = basisOf[key];
    return basis === undefined ? [] : [`${words}: ${basis}`];
  });
  return `Rests on ${parts.join("; ")}.`;
}

const BASIS_SHOWN: readonly (readonly [keyof BasisOf, string])[] = [
  ["propellerPowerCoefficient", "power coefficient"],
  ["packResistanceMohm", "pack resistance"],
  ["kv", "motor"],
  ["cruiseShare", "share of full throttle in flight"],
  ["airDensity", "air"],
];

const RULE_WORDS: Readonly<Record<InchStep["verdict"], string>> = {
  holds: "holds",
  fails: "fails",
  "cannot be told": "may hold or fail",
};

export function inchRuleText(
  steps: readonly InchStep[],
  kind: string,
  diameterIn: number,
  range: { readonly fromIn: number; readonly toIn: number } | null,
  measured: ReturnType<typeof measuredShapes>,
): string {
  const parts = steps.map(
    ({ steps: count, load, verdict }) =>
      `${count === 1 ? "one step changes" : `${count} steps change`} the load to x${load.value.toFixed(2)} (${load.low.toFixed(2)} to ${load.high.toFixed(2)}), so the rule ${RULE_WORDS[verdict]}`,
  );
  const reach =
    range === null
      ? "the published shapes do not show where it holds"
      : `at ${diameterIn} inch it holds for one step at pitches of ${range.fromIn} to ${range.toIn} inch`;
  const [least, most] = measured.pitchRatios.map((ratio) => (ratio * diameterIn).toFixed(1));
  const [narrowest, widest] = measured.diametersIn.map((inches) => plainNumber(inches));
  const end = `the published data end at ${least} and ${most} inch of pitch there, and at ${narrowest} and ${widest} inch of diameter`;
  return `One inch up and one down (${kind}): ${[...parts, reach, end].join("; ")}.`;
}
function clause({ text }: Judgement): string {
  const bare = text.replace(/\.$/, "");
  return uncapital(bare);
}

export function sentence(parts: readonly string[]): string {
  return parts.map((part) => `${capital(part)}.`).join(" ");
}
