/**
 * Seeded random numbers, the same everywhere: xorshift with 128 bits of state (Marsaglia, Journal of Statistical
 * Software 8, issue 14, 2003, section 4, shifts 11, 19, 8), period 2^128 - 1. For simulation and permutation, not for
 * secrets. The state is spread from the seed by Knuth's multiplicative steps, the first draws thrown away.
 */
export class RandomNumbers {
  private x: number;
  private y: number;
  private z: number;
  private w: number;

  /** @param seed any integer; its low 32 bits count */
  constructor(seed: number) {
    if (!Number.isInteger(seed)) throw new RangeError(`a seed must be an integer: got ${seed}`);
    const spread = (step: number) => (Math.imul(seed ^ step, 0x9e3779b1) + Math.imul(step, 0x85ebca6b)) >>> 0;
    this.x = spread(1) | 1;
    this.y = spread(2);
    this.z = spread(3);
    this.w = spread(4);
    for (let i = 0; i < 32; i++) this.nextUint32();
  }

  /** A generator with the state given: for checks against published sequences. */
  static fromState(x: number, y: number, z: number, w: number): RandomNumbers {
    const made = new RandomNumbers(0);
    [made.x, made.y, made.z, made.w] = [x, y, z, w];
    return made;
  }

  /** A whole number from 0 to 4294967295. */
  nextUint32(): number {
    const t = this.x ^ (this.x << 11);
    this.x = this.y;
    this.y = this.z;
    this.z = this.w;
    this.w = this.w ^ (this.w >>> 19) ^ t ^ (t >>> 8);
    return this.w >>> 0;
  }

  /** A number from 0, included, to 1, left out, on a grid of 2^-32. */
  next(): number {
    return this.nextUint32() / 2 ** 32;
  }

  /** A whole number from 0 to `count` - 1. */
  below(count: number): number {
    return Math.floor(this.next() * count);
  }

  /** Puts values in random order, each order as likely (Fisher and Yates; Durstenfeld, CACM 7, 1964, 420). */
  shuffle(values: Float64Array): void {
    for (let i = values.length - 1; i > 0; i--) {
      const j = this.below(i + 1);
      const kept = values[i]!;
      values[i] = values[j]!;
      values[j] = kept;
    }
  }
}
