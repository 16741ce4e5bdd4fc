import { type InputName, isRange, type PlanInputs } from "./planInputs.ts";
import { endOutOfReach, reachesNought } from "./sentences.ts";

/** Parts that are above nought whatever they are, in the pilot's words. */
const ABOVE_NOUGHT: Readonly<Partial<Record<InputName, string>>> = {
  powerCoefficient: "the power coefficient",
  packMohm: "the pack resistance",
  kv: "the motor's speed constant",
  cruiseShare: "the share of full throttle in flight",
};

/** Why a value that has a middle has no ends: a part is so open that an end of it is no part at all. */
export function whyNoEnds(needs: readonly InputName[], inputs: PlanInputs): string {
  for (const need of needs) {
    const [words, input] = [ABOVE_NOUGHT[need], inputs[need]];
    if (words !== undefined && isRange(input) && input.low <= 0) return reachesNought(words, input.basis);
  }
  return endOutOfReach();
}
