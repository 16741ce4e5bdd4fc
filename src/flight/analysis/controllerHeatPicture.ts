import type { HeatFit } from "./controllerHeatFit.ts";
import { modelledC } from "./controllerHeatProfile.ts";
import type { HeatSamples } from "./controllerHeatSamples.ts";
import type { LagCorrection } from "./lagCorrection.ts";

/** Measured and modelled temperature, thinned: seconds since the first row and degC. */
export interface HeatPicture {
  readonly measured: readonly (readonly [atS: number, temperatureC: number])[];
  /** As the probe would show it. */
  readonly modelled: readonly (readonly [atS: number, temperatureC: number])[];
}

const MOST_POINTS = 400;
/** A probe's lag differs between heating and cooling: so much of the correction stays open. */
const LAG_DOUBT = 0.3;

export function heatPicture(samples: HeatSamples, { problem, best }: HeatFit): HeatPicture {
  const shown = modelledC(problem, best, best.lagS);
  const stride = Math.max(1, Math.ceil(shown.length / MOST_POINTS));
  const measured: [number, number][] = [];
  const modelled: [number, number][] = [];
  for (let k = 0; k < shown.length; k += stride) {
    const atS = samples.startS + k * samples.stepS;
    modelled.push([atS, shown[k]!]);
    if (!Number.isNaN(samples.temperatureC[k]!)) measured.push([atS, samples.temperatureC[k]!]);
  }
  return { measured, modelled };
}

/** By how much the probe's highest reading stays below the controller's highest temperature. */
export function lagAtPeak(fit: HeatFit): LagCorrection {
  const own = highest(modelledC(fit.problem, fit.best, 0));
  const missedWith = (lagS: number) => Math.max(0, own - highest(modelledC(fit.problem, fit.best, lagS)));
  const valueC = missedWith(fit.best.lagS);
  const open = fit.lagsS.map((lagS) => Math.abs(missedWith(lagS) - valueC));
  return { valueC, halfWidthC: Math.hypot(Math.max(0, ...open), LAG_DOUBT * valueC) };
}

function highest(values: Float64Array): number {
  let most = Number.NEGATIVE_INFINITY;
  for (const value of values) if (value > most) most = value;
  return most;
}
