import {
  decimalPlace,
  highEnd,
  isKnown,
  type KnownQuantity,
  lowEnd,
  plainNumber,
  toPlace,
  unitText,
} from "../../base/quantity/index.ts";
import { capital } from "../../base/words/index.ts";
import { MEASURE_WORDS } from "../analysis/index.ts";
import type { WhyOff, WhyOffFact } from "./whyOff.ts";

export const NOT_IN_THIS_LOG = "this log does not give it";
export const NO_AIR_OF_DAY = "the air of the day is not known: state it with --ambient C";
export const PILOTS_CHOICE = "how long is flown is the pilot's choice, not a matter of the parts";
export const NO_DESCRIBED_VALUE = "nothing in the aircraft file says how the controller heats";
export const CANNOT_BE_SOLVED = "the aircraft file does not hold what a plan needs";

export const FACT_WORDS: Readonly<Record<WhyOffFact, string>> = {
  propellerPowerCoefficient: "propeller",
  packResistance: "pack resistance",
  startVoltage: "volts at the start",
  airDensity: "air",
  motorConstants: "motor constants",
  cruiseShare: "throttle in flight",
  groundCharge: "run-up and taxi",
  timeFlown: "time flown",
  chargeLeft: "charge left",
};

/**
 * "Mean current is +3.1 A off the plan: the plan itself -6.9 A, propeller +5.1 A, ..., not explained +1.3 A." All to
 * the place of the measured half-width; what rounds to nothing is left out.
 */
export function whyOffText({
  line,
  planned,
  measured,
  planItself,
  parts,
  rest,
}: Omit<WhyOff, "text">): string {
  if (!isKnown(measured)) return "";
  const written = writerFor(measured);
  const start = `${capital(MEASURE_WORDS[line])} is ${written(measured.value - planned)} off the plan`;
  if (!isKnown(planItself)) return `${start}; why cannot be told: ${planItself.why}.`;
  const shares = [
    ["the plan itself", -planItself.value] as const,
    ...parts.flatMap(({ fact, change }) =>
      isKnown(change) ? [[FACT_WORDS[fact], change.value] as const] : [],
    ),
    ...(isKnown(rest) ? [["not explained", rest.value] as const] : []),
  ];
  const shown = shares
    .map(([words, value]) => [words, written(value)] as const)
    .filter(([, text]) => /[1-9]/.test(text));
  return `${start}: ${shown.map(([words, text]) => `${words} ${text}`).join(", ")}.`;
}

/** Writes signed numbers to the last place that the measured line is known to. */
function writerFor(known: KnownQuantity): (value: number) => string {
  const { value, unit } = known;
  const widest = Math.max(value - lowEnd(known), highEnd(known) - value);
  return (number) => {
    const size = Math.abs(number);
    const digits = widest > 0 ? toPlace(size, decimalPlace(widest)) : plainNumber(size);
    return `${number < 0 ? "-" : "+"}${digits} ${unitText(unit)}`;
  };
}
