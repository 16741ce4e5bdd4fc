import type { LoadSamples } from "./packResistanceSamples.ts";
import { partners } from "./packResistanceShift.ts";

export interface StepResistance {
  /** Volts per ampere over changes of one second; NaN without any change above a tenth of the peak. */
  readonly ohm: number;
  /** Separate rises and falls of the current by more than a tenth of its peak within one second. */
  readonly steps: number;
}

/** Share of the peak current that a change within a second must exceed to count. */
const STEP_SHARE = 0.1;

/** Slope of the volts against the amps over differences of one second, and how many steps it rests on. */
export function stepResistance(samples: LoadSamples, currentA: Float64Array): StepResistance {
  const later = partners(samples, 1);
  let peak = 0;
  for (let i = 0; i < currentA.length; i++) if (currentA[i]! > peak) peak = currentA[i]!;
  let ii = 0;
  let vi = 0;
  let steps = 0;
  let direction = 0;
  let endOfStepS = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < later.length; i++) {
    const j = later[i]!;
    if (j < 0) continue;
    const dI = currentA[j]! - currentA[i]!;
    if (!(Math.abs(dI) > STEP_SHARE * peak)) continue;
    const sign = Math.sign(dI);
    if (sign !== direction || samples.timeS[i]! > endOfStepS) steps++;
    direction = sign;
    endOfStepS = samples.timeS[j]!;
    ii += dI * dI;
    vi += dI * (samples.packV[j]! - samples.packV[i]!);
  }
  return { ohm: ii > 0 ? -vi / ii : Number.NaN, steps };
}
