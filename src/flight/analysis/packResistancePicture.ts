import { medianInPlace } from "../../base/statistics/index.ts";
import type { PackFit } from "./packResistanceFit.ts";
import type { LoadSamples } from "./packResistanceSamples.ts";

type AmpsAndVolts = readonly [currentA: number, packV: number];

/**
 * What a picture of the pack needs. All volts but `openCircuit` are moved along the curve of the volts at no load to
 * the state at half of the charge drawn, so that the charge no longer spreads them.
 */
export interface PackPicture {
  /** Single samples, thinned to one in each cell of a grid: every outlier stays. */
  readonly points: readonly AmpsAndVolts[];
  /** Both ends of the lines that far after a step: dots of short bursts lie near the first, of long loads near the last. */
  readonly lines: readonly {
    readonly afterS: number;
    readonly ends: readonly [AmpsAndVolts, AmpsAndVolts];
  }[];
  /** The sample with the lowest volts, and how far it lies below the volts at no load. */
  readonly lowest: {
    readonly atS: number;
    readonly currentA: number;
    readonly packV: number;
    readonly belowV: number;
  };
  /** Equal stretches of current with how many samples lie in each, their median and the volts of the line after 10 s at its middle. */
  readonly bands: readonly PackBand[];
  /** Charge drawn in this range, mAh, and volts at no load. */
  readonly openCircuit: readonly (readonly [chargeMah: number, packV: number])[];
}

export interface PackBand {
  readonly fromA: number;
  readonly toA: number;
  readonly samples: number;
  readonly medianV: number;
  readonly lineV: number;
}

const GRID = { across: 48, up: 32 } as const;
const BANDS = 8;
const LINES_S = [1, 10, 60] as const;
const CURVE_POINTS = 41;
const COULOMBS_PER_MAH = 3.6;

export function packPicture(samples: LoadSamples, currentA: Float64Array, fit: PackFit): PackPicture {
  const middleV = fit.openCircuitV(0.5);
  const movedV = samples.packV.map((volts, i) => volts - fit.openCircuitV(fit.chargeShare[i]!) + middleV);
  const peakA = currentA.reduce((peak, amps) => Math.max(peak, amps), 0);
  const lineAt = (amps: number) => middleV - fit.resistanceOhm(10) * amps;
  const low = movedV.reduce((found, volts, i) => (volts < movedV[found]! ? i : found), 0);
  const openCircuit = Array.from({ length: CURVE_POINTS }, (_, k): [number, number] => {
    const share = k / (CURVE_POINTS - 1);
    return [(share * fit.chargeC) / COULOMBS_PER_MAH, fit.openCircuitV(share)];
  });
  return {
    points: thinned(currentA, movedV),
    lines: LINES_S.map((afterS) => ({
      afterS,
      ends: [
        [0, middleV],
        [peakA, middleV - fit.resistanceOhm(afterS) * peakA],
      ],
    })),
    lowest: {
      atS: samples.timeS[low]!,
      currentA: currentA[low]!,
      packV: movedV[low]!,
      belowV: middleV - movedV[low]!,
    },
    bands: bandsOf(currentA, movedV, peakA, lineAt),
    openCircuit,
  };
}

/** The first sample in each cell of a grid over all samples. */
function thinned(currentA: Float64Array, packV: Float64Array): readonly AmpsAndVolts[] {
  const cellOf = (values: Float64Array, count: number) => {
    const low = values.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY);
    const high = values.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
    const per = (high - low) / count || 1;
    return (value: number) => Math.min(count - 1, Math.floor((value - low) / per));
  };
  const across = cellOf(currentA, GRID.across);
  const up = cellOf(packV, GRID.up);
  const kept = new Map<number, AmpsAndVolts>();
  for (let i = 0; i < currentA.length; i++) {
    const cell = across(currentA[i]!) * GRID.up + up(packV[i]!);
    if (!kept.has(cell)) kept.set(cell, [currentA[i]!, packV[i]!]);
  }
  return [...kept.values()];
}

function bandsOf(
  currentA: Float64Array,
  packV: Float64Array,
  peakA: number,
  lineAt: (amps: number) => number,
): readonly PackBand[] {
  const per = peakA / BANDS;
  return Array.from({ length: BANDS }, (_, k) => {
    const [fromA, toA] = [k * per, (k + 1) * per];
    const isLast = k === BANDS - 1;
    const inside = packV.filter((_volts, i) => {
      const amps = currentA[i]!;
      return (amps >= fromA || k === 0) && (amps < toA || isLast);
    });
    const medianV = inside.length === 0 ? Number.NaN : medianInPlace(inside);
    return { fromA, toA, samples: inside.length, medianV, lineV: lineAt((fromA + toA) / 2) };
  }).filter(({ samples: count }) => count > 0);
}
