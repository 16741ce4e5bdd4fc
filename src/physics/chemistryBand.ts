import {
  type BandPoint,
  CHEN_RINCON_MORA_UP_TO_PCT,
  type Chemistry,
  COMMUNITY_REST_TABLE,
  CURVE_STEP_PCT,
  chenRinconMoraV,
  IRON_PHOSPHATE_BAND,
  POUCH_CELL_FROM_2V5,
  POUCH_CELL_FROM_3V0,
} from "./restVoltageCurves.ts";
import { chemistryFromPractice } from "./sentences.ts";

/** Lithium-ion cells other than pouch cells differ by this much more (from memory, no published source). */
const ION_EXTRA_V = 0.06;
/** High-voltage polymer cells: full at 4.35 V; the rise above 4.2 V is spread over the upper half of the charge. */
const HIGH_VOLTAGE_EXTRA_V = 0.15;
const HIGH_VOLTAGE_DOUBT_V = 0.05;

/** Rising voltages at rising charge for a chemistry; each column rises from point to point. */
export function chemistryBand(chemistry: Chemistry): readonly BandPoint[] {
  return BANDS[chemistry];
}

/** Why a band is wide, or null when it spans published curves. */
export function chemistryRemark(chemistry: Chemistry): string | null {
  return chemistry === "lipo" ? null : chemistryFromPractice(chemistry);
}

/** Lowest and highest of the curves at each charge, and the mean of the three cells (the pouch cell from 3.0 V). */
function polymerBand(): BandPoint[] {
  return COMMUNITY_REST_TABLE.map((community, i) => {
    const chargePct = i * CURVE_STEP_PCT;
    const chen = chargePct <= CHEN_RINCON_MORA_UP_TO_PCT ? [chenRinconMoraV(chargePct)] : [];
    const cells = [community, POUCH_CELL_FROM_3V0[i]!, ...chen];
    const all = [...cells, POUCH_CELL_FROM_2V5[i]!];
    const value = cells.reduce((sum, volts) => sum + volts, 0) / cells.length;
    return [chargePct, Math.min(...all), value, Math.max(...all)] as const;
  });
}

function widened(band: readonly BandPoint[], extraV: number): BandPoint[] {
  return band.map(([chargePct, low, value, high]) => [chargePct, low - extraV, value, high + extraV]);
}

function highVoltageBand(band: readonly BandPoint[]): BandPoint[] {
  return band.map(([chargePct, low, value, high]) => {
    const lift = HIGH_VOLTAGE_EXTRA_V * Math.max(0, (chargePct - 50) / 50);
    return [chargePct, low - HIGH_VOLTAGE_DOUBT_V, value + lift, high + lift + HIGH_VOLTAGE_DOUBT_V];
  });
}

const POLYMER = polymerBand();
const BANDS: Readonly<Record<Chemistry, readonly BandPoint[]>> = {
  lipo: POLYMER,
  lihv: highVoltageBand(POLYMER),
  liion: widened(POLYMER, ION_EXTRA_V),
  life: IRON_PHOSPHATE_BAND,
};
