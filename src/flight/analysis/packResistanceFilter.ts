import type { LoadSamples } from "./packResistanceSamples.ts";

/** A signal through a first-order filter, exact where it is linear between samples; starts anew after a hole. */
export function filtered(samples: LoadSamples, signal: Float64Array, constantS: number): Float64Array {
  const out = new Float64Array(signal.length);
  out[0] = signal[0]!;
  let kept = 0;
  let previousDt = 0;
  for (let i = 1; i < out.length; i++) {
    const dt = samples.timeS[i]! - samples.timeS[i - 1]!;
    if (dt > samples.holeS || Number.isNaN(out[i - 1]!)) {
      out[i] = signal[i]!;
      continue;
    }
    if (dt !== previousDt) kept = Math.exp(-dt / constantS);
    previousDt = dt;
    const slope = (signal[i]! - signal[i - 1]!) / dt;
    out[i] = signal[i]! - slope * constantS * (1 - kept) + kept * (out[i - 1]! - signal[i - 1]!);
  }
  return out;
}
