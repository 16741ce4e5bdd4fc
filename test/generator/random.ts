/** A seeded source of random numbers: same seed, same numbers, on every machine. */
export interface Random {
  /** Uniform, 0 <= x < 1. */
  readonly next: () => number;
  /** Uniform between `low` and `high`. */
  readonly between: (low: number, high: number) => number;
  /** Normal with mean 0 and standard deviation 1 (polar method of Marsaglia). */
  readonly normal: () => number;
  /** Whole number, `low` and `high` included. */
  readonly whole: (low: number, high: number) => number;
  readonly pick: <Item>(items: readonly Item[]) => Item;
  readonly chance: (probability: number) => boolean;
  /** An independent source for one purpose, so that adding a draw elsewhere changes nothing here. */
  readonly fork: (purpose: string) => Random;
}

/** FNV-1a, 32 bits: turns a purpose into a seed. */
function hashText(text: string, start: number): number {
  let hash = (start ^ 0x811c9dc5) >>> 0;
  for (const letter of text) hash = Math.imul(hash ^ letter.charCodeAt(0), 0x01000193) >>> 0;
  return hash;
}

/** Weyl sequence through a 32-bit finaliser: short, and good enough for simulated sensors. */
function uniformSource(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x9e3779b9) >>> 0;
    let mixed = state;
    mixed = Math.imul(mixed ^ (mixed >>> 16), 0x21f0aaad);
    mixed = Math.imul(mixed ^ (mixed >>> 15), 0x735a2d97);
    return ((mixed ^ (mixed >>> 15)) >>> 0) / 0x1_0000_0000;
  };
}

function normalSource(next: () => number): () => number {
  let spare: number | null = null;
  return () => {
    if (spare !== null) {
      const kept = spare;
      spare = null;
      return kept;
    }
    for (;;) {
      const x = 2 * next() - 1;
      const y = 2 * next() - 1;
      const square = x * x + y * y;
      if (square === 0 || square >= 1) continue;
      const stretch = Math.sqrt((-2 * Math.log(square)) / square);
      spare = y * stretch;
      return x * stretch;
    }
  };
}

export function seededRandom(seed: number): Random {
  const next = uniformSource(hashText("start", seed));
  return {
    next,
    between: (low, high) => low + (high - low) * next(),
    normal: normalSource(next),
    whole: (low, high) => low + Math.floor(next() * (high - low + 1)),
    pick: (items) => items[Math.floor(next() * items.length)] as (typeof items)[number],
    chance: (probability) => next() < probability,
    fork: (purpose) => seededRandom(hashText(purpose, seed)),
  };
}
