import { median } from "../../base/statistics/index.ts";
import { resistanceRatio } from "../../physics/index.ts";
import type { LogbookEntry } from "../logbook/index.ts";
import { groupsBy, packKey } from "./fittings.ts";
import { chargeNumbers } from "./packCharges.ts";
import { plainSeries, type RawSeries } from "./rawSeries.ts";
import { ageingOrTemperature } from "./sentences.ts";
import { FEWEST_POINTS } from "./watch.ts";

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
  if (series.points.length < FEWEST_POINTS) return series;
  const packC = series.entries.map((entry) => entry.check.measures.packStartC.value);
  const logged = new Set(packC.flatMap((one, index) => (one === null ? [] : [index])));
  if (logged.size >= FEWEST_POINTS) {
    const compared = onlyOf(series, logged);
    return {
      ...compared,
      variants: atOneTemperature(
        ohmsOf(compared),
        packC.filter((one) => one !== null),
      ),
    };
  }
  const alike = alikeDays(series.entries.map(({ given }) => given.ambientC));
  if (alike === null) return { ...series, notJudged: ageingOrTemperature() };
  const compared = onlyOf(series, alike);
  const airC = compared.entries.map(({ given }) => given.ambientC ?? Number.NaN);
  const ohms = ohmsOf(compared);
  return { ...compared, variants: [ohms, ...atOneTemperature(ohms, airC)] };
}

/** The flights that can be compared, by index. */
function onlyOf(series: RawSeries, compared: ReadonlySet<number>): RawSeries {
  const kept = <Value>(values: readonly Value[]) => values.filter((_, index) => compared.has(index));
  const { points, x, entries, variants } = series;
  return {
    ...series,
    points: kept(points),
    x: kept(x),
    entries: kept(entries),
    variants: variants.map((values) => kept(values)),
  };
}

function ohmsOf({ points }: RawSeries): readonly number[] {
  return points.map(({ value }) => value);
}

/** The most flights whose air lay within 4 degC of each other, by index; null when too few for a trend. */
function alikeDays(airC: readonly (number | null)[]): ReadonlySet<number> | null {
  let most: readonly number[] = [];
  for (const coldestC of airC) {
    if (coldestC === null) continue;
    const within = airC.flatMap((one, index) =>
      one !== null && one >= coldestC && one <= coldestC + ALIKE_C ? [index] : [],
    );
    if (within.length > most.length) most = within;
  }
  return most.length >= FEWEST_POINTS ? new Set(most) : null;
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
