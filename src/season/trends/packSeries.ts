import { median } from "../../base/statistics/index.ts";
import { resistanceRatio } from "../../physics/index.ts";
import type { LogbookEntry } from "../logbook/index.ts";
import { groupsBy, packKey } from "./fittings.ts";
import { chargeNumbers } from "./packCharges.ts";
import { plainSeries, type RawSeries } from "./rawSeries.ts";
import { ageingOrTemperature } from "./sentences.ts";

/** Packs whose temperature nobody logged are compared only on days as close as this, degC. */
const ALIKE_C = 4;

/** Pack resistance against charges, one series per pack. */
export function packSeries(entries: readonly LogbookEntry[]): readonly RawSeries[] {
  return groupsBy(entries, packKey).flatMap((ofPack) => {
    const first = ofPack[0];
    if (first === undefined) return [];
    const of = { pack: first.given.pack, propeller: null, controller: null };
    const raw = { measure: "packResistanceMohm", unit: "mohm", of, direction: "up" } as const;
    const series = plainSeries(raw, ofPack, (entry) => entry.check.measures.packResistanceMohm);
    if (series.points.length === 0) return [];
    const charges = chargeNumbers(ofPack);
    return [withTemperature({ ...series, x: series.entries.map((entry) => charges.get(entry) ?? 0) })];
  });
}

/**
 * What the points would be at one temperature. The dependence differs from cell to cell and, when only the air is
 * known, the pack may or may not have had its temperature: each case is a reading of its own, and a change counts
 * only if all of them show it.
 */
function withTemperature(series: RawSeries): RawSeries {
  const ohms = series.points.map(({ value }) => value);
  const packC = series.entries.map((entry) => entry.check.measures.packStartC.value);
  if (packC.every((one) => one !== null)) return { ...series, variants: atOneTemperature(ohms, packC) };
  const airC = series.entries.map((entry) => entry.given.ambientC);
  const isClose = airC.every((one) => one !== null) && Math.max(...airC) - Math.min(...airC) <= ALIKE_C;
  if (!isClose) return { ...series, notJudged: ageingOrTemperature() };
  return { ...series, variants: [ohms, ...atOneTemperature(ohms, airC as readonly number[])] };
}

/** The points moved to their median temperature by the weakest and by the strongest published dependence. */
function atOneTemperature(
  ohms: readonly number[],
  temperatureC: readonly number[],
): readonly (readonly number[])[] {
  const middleC = median(temperatureC);
  const moved = (side: (ratio: ReturnType<typeof resistanceRatio>) => number) =>
    ohms.map((ohm, index) => ohm / side(resistanceRatio(temperatureC[index] ?? middleC, middleC)));
  // The stronger dependence is the larger ratio on a colder pack and the smaller one on a warmer pack.
  const weak = moved((ratio) => (ratio.value >= 1 ? ratio.low : ratio.high));
  const strong = moved((ratio) => (ratio.value >= 1 ? ratio.high : ratio.low));
  return [weak, strong];
}
