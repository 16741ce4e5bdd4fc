/** Where a series steps up from one level to another. */
export interface LevelRise {
  readonly atS: number;
  /** Mean after less mean before, in the unit of the values. */
  readonly rise: number;
}

/**
 * The split of a series into two levels, the later one higher, that leaves the least squares (one change
 * point, two passes). Null when no split with `fewestS` on either side rises by `smallestRise` and clearly
 * beyond the scatter.
 */
export function levelRise(
  timeS: readonly number[],
  values: readonly number[],
  fewestS: number,
  smallestRise: number,
): LevelRise | null {
  const count = values.length;
  const total = values.reduce((sum, value) => sum + value, 0);
  const squares = values.reduce((sum, value) => sum + value * value, 0);
  let best: { readonly index: number; readonly rise: number; readonly gain: number } | null = null;
  let sum = 0;
  for (let index = 1; index < count; index++) {
    sum += values[index - 1]!;
    if (timeS[index]! - timeS[0]! < fewestS || timeS[count - 1]! - timeS[index]! < fewestS) continue;
    const rise = (total - sum) / (count - index) - sum / index;
    const gain = rise * rise * ((index * (count - index)) / count);
    if (rise > 0 && gain > (best?.gain ?? 0)) best = { index, rise, gain };
  }
  if (best === null || best.rise < smallestRise) return null;
  const scatter = Math.sqrt(Math.max(0, squares - (total * total) / count - best.gain) / count);
  return best.rise > CLEAR_RISE * scatter ? { atS: timeS[best.index]!, rise: best.rise } : null;
}

/** A rise counts when it is this many standard deviations of what is left around the two levels. */
const CLEAR_RISE = 1.2;
