export type Chemistry = "lipo" | "lihv" | "liion" | "life";

/** One open-circuit curve: V per cell at 0, 5, 10 ... 100 % of charge. */
export type RestCurve = readonly number[];

export const CURVE_STEP_PCT = 5;

/** Rest table copied through hobby projects; its author is not known, one copy calls it a community estimate. */
export const COMMUNITY_REST_TABLE: RestCurve = [
  3.27, 3.61, 3.69, 3.71, 3.73, 3.75, 3.77, 3.79, 3.8, 3.82, 3.84, 3.85, 3.87, 3.91, 3.95, 3.98, 4.02, 4.08,
  4.11, 4.15, 4.2,
];

/**
 * Large pouch cell between 2.5 and 4.2 V, from the half-cell curves of Ecker and others, J. Electrochem. Soc. 162
 * (2015) A1836 and A1849.
 */
export const POUCH_CELL_FROM_2V5: RestCurve = [
  2.5, 3.2938, 3.4586, 3.5277, 3.587, 3.6565, 3.7094, 3.743, 3.77, 3.7805, 3.7873, 3.7979, 3.8155, 3.8417,
  3.8823, 3.94, 3.9868, 4.0304, 4.0789, 4.1353, 4.2,
];

/** The same cell, called empty at 3.0 V. */
export const POUCH_CELL_FROM_3V0: RestCurve = [
  3.0, 3.37, 3.4845, 3.5444, 3.606, 3.6731, 3.7184, 3.7502, 3.7733, 3.7818, 3.7887, 3.8001, 3.8186, 3.8456,
  3.8879, 3.9446, 3.9898, 4.0328, 4.0807, 4.1364, 4.2,
];

/**
 * Chen and Rincon-Mora, IEEE Trans. Energy Conversion 21 (2006) 504, equation 2:
 * Voc = -1.031 exp(-35 s) + 3.685 + 0.2156 s - 0.1178 s^2 + 0.3201 s^3, s the share of charge.
 * Their full cell stands at 4.10 V, so it is no witness for the upper end of a cell charged to 4.2 V.
 */
export function chenRinconMoraV(chargePct: number): number {
  const s = chargePct / 100;
  return -1.031 * Math.exp(-35 * s) + 3.685 + 0.2156 * s - 0.1178 * s ** 2 + 0.3201 * s ** 3;
}

/** Charge up to which that curve counts. */
export const CHEN_RINCON_MORA_UP_TO_PCT = 70;

/** A band by points of charge: [charge %, low V, value V, high V]. */
export type BandPoint = readonly [chargePct: number, low: number, value: number, high: number];

/** Iron phosphate: from memory, common practice, no published source. Flat between, so nearly blind there. */
export const IRON_PHOSPHATE_BAND: readonly BandPoint[] = [
  [0, 2.0, 2.6, 3.0],
  [10, 3.0, 3.18, 3.25],
  [20, 3.15, 3.23, 3.29],
  [50, 3.22, 3.29, 3.34],
  [90, 3.28, 3.34, 3.42],
  [100, 3.33, 3.45, 3.65],
];
