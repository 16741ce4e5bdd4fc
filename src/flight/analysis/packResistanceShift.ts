import type { LoadSamples } from "./packResistanceSamples.ts";

/**
 * Amps at `timeS + shiftS`, linear between samples; held at the ends and never carried across a hole.
 * A current sensor that reports late by s is put right by shiftS = s.
 */
export function shiftedCurrent(samples: LoadSamples, shiftS: number): Float64Array {
  const { timeS, currentA, holeS } = samples;
  const last = timeS.length - 1;
  const shifted = new Float64Array(timeS.length);
  let below = 0;
  for (let i = 0; i <= last; i++) {
    const at = timeS[i]! + shiftS;
    while (below < last && timeS[below + 1]! <= at) below++;
    while (below > 0 && timeS[below]! > at) below--;
    const width = below < last ? timeS[below + 1]! - timeS[below]! : 0;
    const share = width > 0 && width <= holeS ? (at - timeS[below]!) / width : 0;
    const low = currentA[below]!;
    shifted[i] = share > 0 ? low + share * (currentA[below + 1]! - low) : low;
  }
  return shifted;
}

/** For each sample the one nearest to `lagS` later, or -1 where none lies within half of that. */
export function partners(samples: LoadSamples, lagS: number): Int32Array {
  const { timeS } = samples;
  const found = new Int32Array(timeS.length).fill(-1);
  let j = 0;
  for (let i = 0; i < timeS.length; i++) {
    const target = timeS[i]! + lagS;
    while (j + 1 < timeS.length && Math.abs(timeS[j + 1]! - target) <= Math.abs(timeS[j]! - target)) j++;
    if (j > i && Math.abs(timeS[j]! - target) <= lagS / 2) found[i] = j;
  }
  return found;
}
