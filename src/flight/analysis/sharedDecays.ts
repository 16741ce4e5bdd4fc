import { decayAt } from "../../physics/index.ts";

/** exp(-t / tau) at the sample times, at least `count` of them. */
export type Decays = (count: number, stepS: number, timeConstantS: number) => Float64Array;

/** Each worked out once for all flights: searches over many flights ask for the same time constants again and again. */
export function sharedDecays(): Decays {
  const known = new Map<number, Map<number, Float64Array>>();
  return (count, stepS, timeConstantS) => {
    const ofStep = known.get(stepS) ?? new Map<number, Float64Array>();
    known.set(stepS, ofStep);
    const before = ofStep.get(timeConstantS);
    if (before !== undefined && before.length >= count) return before;
    const decay = decayAt(count, stepS, timeConstantS);
    ofStep.set(timeConstantS, decay);
    return decay;
  };
}
