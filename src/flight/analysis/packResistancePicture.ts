import type { PackFit } from "./packResistanceFit.ts";
import type { LoadSamples } from "./packResistanceSamples.ts";

/** What a picture of the pack needs: volts against amps with the fitted line, and volts at no load against charge. */
export interface PackPicture {
  /** Amps and volts of single samples, the volts moved to the state of charge at half of the charge drawn. */
  readonly points: readonly (readonly [currentA: number, packV: number])[];
  /** The two ends of the line with the resistance 10 s after a step, through the same state of charge. */
  readonly line: readonly (readonly [currentA: number, packV: number])[];
  /** Charge drawn in this range, mAh, and volts at no load. */
  readonly openCircuit: readonly (readonly [chargeMah: number, packV: number])[];
}

const MOST_POINTS = 400;
const CURVE_POINTS = 41;
const COULOMBS_PER_MAH = 3.6;

export function packPicture(samples: LoadSamples, currentA: Float64Array, fit: PackFit): PackPicture {
  const stride = Math.max(1, Math.ceil(currentA.length / MOST_POINTS));
  const middleV = fit.openCircuitV(0.5);
  const points: [number, number][] = [];
  let peak = 0;
  for (let i = 0; i < currentA.length; i++) {
    if (currentA[i]! > peak) peak = currentA[i]!;
    if (i % stride !== 0) continue;
    points.push([currentA[i]!, samples.packV[i]! - fit.openCircuitV(fit.chargeShare[i]!) + middleV]);
  }
  const openCircuit = Array.from({ length: CURVE_POINTS }, (_, k): [number, number] => {
    const share = k / (CURVE_POINTS - 1);
    return [(share * fit.chargeC) / COULOMBS_PER_MAH, fit.openCircuitV(share)];
  });
  const lineEnd = middleV - fit.resistanceOhm(10) * peak;
  return {
    points,
    line: [
      [0, middleV],
      [peak, lineEnd],
    ],
    openCircuit,
  };
}
