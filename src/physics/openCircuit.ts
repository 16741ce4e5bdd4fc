import { chemistryBand } from "./chemistryBand.ts";
import type { BandPoint, Chemistry } from "./restVoltageCurves.ts";

/** A value and the range the sources span: not a 95 % interval, a band that covers them all. */
export interface Band {
  readonly low: number;
  readonly value: number;
  readonly high: number;
}

/**
 * Open-circuit (rested) volts of one cell at a state of charge, by chemistry. For lithium polymer the band spans the
 * published curves and the community table (see restVoltageCurves.ts); the other chemistries are wider and from
 * common practice: `chemistryRemark` says so. Temperature is not in it (below 10 mV between 10 and 40 degC).
 * Charge outside 0 to 100 is taken as the nearer end.
 * @throws RangeError for NaN
 */
export function openCircuitCellV(chargePct: number, chemistry: Chemistry): Band {
  if (Number.isNaN(chargePct)) throw new RangeError(`a state of charge must be a number: got ${chargePct}`);
  const band = chemistryBand(chemistry);
  const at = Math.min(100, Math.max(0, chargePct));
  return {
    low: interpolate(band, at, 0, 1),
    value: interpolate(band, at, 0, 2),
    high: interpolate(band, at, 0, 3),
  };
}

/**
 * State of charge, %, that a rested cell voltage allows: 3.80 V is 40 to 56 % by source. Above the full and below
 * the empty end of the band it is 100 and 0.
 * @throws RangeError for NaN
 */
export function stateOfChargeBandPct(restCellV: number, chemistry: Chemistry): Band {
  if (Number.isNaN(restCellV)) throw new RangeError(`a cell voltage must be a number: got ${restCellV}`);
  const band = chemistryBand(chemistry);
  return {
    low: interpolate(band, restCellV, 3, 0),
    value: interpolate(band, restCellV, 2, 0),
    high: interpolate(band, restCellV, 1, 0),
  };
}

/** Linear between points, column `from` to column `to`; the end values outside. */
function interpolate(band: readonly BandPoint[], at: number, from: number, to: number): number {
  if (at <= band[0]![from]!) return band[0]![to]!;
  for (let i = 1; i < band.length; i++) {
    const left = band[i - 1]!;
    const right = band[i]!;
    if (at > right[from]!) continue;
    const share = (at - left[from]!) / (right[from]! - left[from]!);
    return left[to]! + share * (right[to]! - left[to]!);
  }
  return band.at(-1)![to]!;
}
