import { rememberedOf } from "../../base/remembered/index.ts";
import { spreadOf } from "./spread.ts";

/** A step of more than this share of the largest values is coarse (0.1 or 1 A steps on 60 A are not). */
const COARSE_SHARE = 0.03;

/**
 * Smallest change that the channel shows between two of its values that follow each other; 0 if it never changes.
 * Channels are never changed in place, and several questions ask for the step of the same one.
 */
export const smallestStep = rememberedOf(measuredStep);

function measuredStep(values: Float64Array): number {
  let smallest = Number.POSITIVE_INFINITY;
  let before = Number.NaN;
  for (let row = 0; row < values.length; row++) {
    const value = values[row]!;
    if (Number.isNaN(value)) continue;
    const step = value > before ? value - before : before - value;
    if (step > 0 && step < smallest) smallest = step;
    before = value;
  }
  return Number.isFinite(smallest) ? smallest : 0;
}

/** The step of a coarse channel in its unit, or null where the channel is fine enough. */
export function coarseStep(values: Float64Array): number | null {
  const step = smallestStep(values);
  return step > COARSE_SHARE * Math.abs(spreadOf(values).high) ? step : null;
}
