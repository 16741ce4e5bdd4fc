import { rememberedBy } from "../../base/remembered/index.ts";
import type { LoadSamples } from "./packResistanceSamples.ts";

/** A first-order filter of one time constant over the times of some samples; writes into `out` where it is given one. */
type Filter = (signal: Float64Array, out?: Float64Array) => Float64Array;
/** The filters over the times of some samples, by time constant, seconds. */
export type LoadFilters = (constantS: number) => Filter;

/** Many signals go through few filters: what depends on the times alone is worked out once. */
export function loadFilters(samples: Pick<LoadSamples, "timeS" | "holeS">): LoadFilters {
  return rememberedBy((constantS) => filterOf(samples, constantS));
}

/** Exact for a signal that is linear between samples; starts anew after a hole. */
function filterOf({ timeS, holeS }: Pick<LoadSamples, "timeS" | "holeS">, constantS: number): Filter {
  const kept = keptShares(timeS, constantS);
  return (signal, out = new Float64Array(signal.length)) => {
    out[0] = signal[0]!;
    for (let i = 1; i < out.length; i++) {
      const dt = timeS[i]! - timeS[i - 1]!;
      const before = out[i - 1]!;
      if (dt > holeS || Number.isNaN(before)) {
        out[i] = signal[i]!;
        continue;
      }
      const slope = (signal[i]! - signal[i - 1]!) / dt;
      out[i] = signal[i]! - slope * constantS * (1 - kept[i]!) + kept[i]! * (before - signal[i - 1]!);
    }
    return out;
  };
}

/** What is left of a difference after each step. */
function keptShares(timeS: Float64Array, constantS: number): Float64Array {
  const kept = new Float64Array(timeS.length);
  for (let i = 1; i < kept.length; i++) {
    const dt = timeS[i]! - timeS[i - 1]!;
    const isSameStep = i > 1 && dt === timeS[i - 1]! - timeS[i - 2]!;
    kept[i] = isSameStep ? kept[i - 1]! : Math.exp(-dt / constantS);
  }
  return kept;
}
