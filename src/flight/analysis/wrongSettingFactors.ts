import type { Facts } from "../../aircraft/facts.ts";

/** A factor by which a speed sensor may read wrong, and the mistakes that lead to it. */
export interface SpeedFactor {
  /** Logged over true. */
  readonly factor: number;
  readonly words: string;
}

const BLADE_COUNTS = [1, 2, 3, 4] as const;
/** Usual pole pairs of such motors, tried where the aircraft file gives none (common practice, no published source). */
const USUAL_POLE_PAIRS = [5, 6, 7, 8, 10, 11, 12, 14] as const;
/** Pole pairs that are mistaken for each other differ by at most this many. */
const NEIGHBOURS = 2;
/** Factors closer than this are one. */
const SAME = 0.005;

/** Every factor from blade counts, the aircraft file's pole pairs (usual ones without it) and ratios, each once. */
export function speedFactors({ motor }: Facts): readonly SpeedFactor[] {
  const pairs = motor.polePairs === null ? USUAL_POLE_PAIRS : [motor.polePairs];
  return merged([...bladeFactors(), ...pairs.flatMap(poleFactors)]);
}

/** Electrical turns of other usual pole pairs than the stated ones, in case those are stated wrongly. */
export function otherPolePairs({ motor }: Facts): readonly SpeedFactor[] {
  return USUAL_POLE_PAIRS.filter((pairs) => pairs !== motor.polePairs)
    .flatMap((pairs) => poleFactors(pairs).slice(0, 2))
    .map(({ factor, words }) => ({ factor, words: `${words}, not as stated` }));
}

function merged(all: readonly SpeedFactor[]): readonly SpeedFactor[] {
  const kept: SpeedFactor[] = [];
  for (const one of all) {
    const at = kept.findIndex((other) => Math.abs(Math.log(one.factor / other.factor)) < SAME);
    if (at < 0) kept.push(one);
    else kept[at] = { factor: kept[at]!.factor, words: `${kept[at]!.words}, or ${one.words}` };
  }
  return kept;
}

function bladeFactors(): SpeedFactor[] {
  return BLADE_COUNTS.flatMap((fitted) =>
    BLADE_COUNTS.filter((set) => set !== fitted).map((set) => ({
      factor: fitted / set,
      words: `speed sensor set for ${blades(set)} instead of ${fitted}`,
    })),
  ).filter(isLowestTerms);
}

function blades(count: number): string {
  return count === 1 ? "1 blade" : `${count} blades`;
}

/** 2/4 is 1/2 already. */
function isLowestTerms({ factor }: SpeedFactor, k: number, all: readonly SpeedFactor[]): boolean {
  return all.findIndex((other) => Math.abs(other.factor - factor) < 1e-9) === k;
}

function poleFactors(pairs: number): SpeedFactor[] {
  const counted = [
    { factor: pairs, words: `electrical turns logged as shaft turns (${pairs} pole pairs)` },
    { factor: 1 / pairs, words: `shaft turns divided by ${pairs} pole pairs once too often` },
    { factor: 2, words: "pole pairs set where poles are asked for" },
    { factor: 1 / 2, words: "poles set where pole pairs are asked for" },
  ];
  for (let set = pairs - NEIGHBOURS; set <= pairs + NEIGHBOURS; set++) {
    if (set < 1 || set === pairs) continue;
    counted.push({ factor: pairs / set, words: `${set} instead of ${pairs} pole pairs set` });
  }
  return counted;
}
