const BLOCK = 64;
/** First 32 bits of the fractional parts of the cube roots of the first 64 primes, and of the square roots of the first 8. */
const { constants: CONSTANTS, start: START } = primeParts();

/**
 * Hex SHA-256 digest (NIST, FIPS 180-4, Secure Hash Standard, 2015, section 6.2) of bytes or of a text as UTF-8.
 * The browser's own gives promises only, and none on a page that a phone opens from its downloads.
 */
export function sha256Of(data: Uint8Array | string): string {
  const bytes = typeof data === "string" ? new TextEncoder().encode(data) : data;
  const state = START.slice();
  const words = new Uint32Array(BLOCK);
  const whole = bytes.length - (bytes.length % BLOCK);
  for (let from = 0; from < whole; from += BLOCK) addBlock(state, words, bytes, from);
  const end = paddedEnd(bytes, whole);
  for (let from = 0; from < end.length; from += BLOCK) addBlock(state, words, end, from);
  return [...state].map((word) => word.toString(16).padStart(8, "0")).join("");
}

/** The last bytes with the mark, zeros and the length in bits behind them: one block or two. */
function paddedEnd(bytes: Uint8Array, whole: number): Uint8Array {
  const rest = bytes.length - whole;
  const end = new Uint8Array(rest < BLOCK - 8 ? BLOCK : 2 * BLOCK);
  end.set(bytes.subarray(whole));
  end[rest] = 0x80;
  const view = new DataView(end.buffer);
  view.setUint32(end.length - 8, Math.floor(bytes.length / 2 ** 29));
  view.setUint32(end.length - 4, (bytes.length * 8) >>> 0);
  return end;
}

function addBlock(state: Uint32Array, words: Uint32Array, bytes: Uint8Array, from: number): void {
  fillWords(words, bytes, from);
  let [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0] = state;
  for (let at = 0; at < BLOCK; at += 1) {
    const big = turned(e, 6) ^ turned(e, 11) ^ turned(e, 25);
    const one = (h + big + ((e & f) ^ (~e & g)) + (CONSTANTS[at] ?? 0) + (words[at] ?? 0)) | 0;
    const other = ((turned(a, 2) ^ turned(a, 13) ^ turned(a, 22)) + ((a & b) ^ (a & c) ^ (b & c))) | 0;
    h = g;
    g = f;
    f = e;
    e = (d + one) | 0;
    d = c;
    c = b;
    b = a;
    a = (one + other) | 0;
  }
  [a, b, c, d, e, f, g, h].forEach((word, at) => {
    state[at] = (state[at] ?? 0) + word;
  });
}

function fillWords(words: Uint32Array, bytes: Uint8Array, from: number): void {
  for (let at = 0; at < 16; at += 1) {
    const byte = from + 4 * at;
    words[at] =
      ((bytes[byte] ?? 0) << 24) |
      ((bytes[byte + 1] ?? 0) << 16) |
      ((bytes[byte + 2] ?? 0) << 8) |
      (bytes[byte + 3] ?? 0);
  }
  for (let at = 16; at < BLOCK; at += 1) {
    const before = words[at - 15] ?? 0;
    const last = words[at - 2] ?? 0;
    const small = turned(before, 7) ^ turned(before, 18) ^ (before >>> 3);
    const other = turned(last, 17) ^ turned(last, 19) ^ (last >>> 10);
    words[at] = (words[at - 16] ?? 0) + small + (words[at - 7] ?? 0) + other;
  }
}

function turned(word: number, bits: number): number {
  return (word >>> bits) | (word << (32 - bits));
}

function primeParts(): { readonly constants: Uint32Array; readonly start: Uint32Array } {
  const primes: number[] = [];
  for (let number = 2; primes.length < BLOCK; number += 1) {
    if (primes.every((prime) => number % prime !== 0)) primes.push(number);
  }
  const part = (root: number): number => Math.floor((root % 1) * 2 ** 32);
  return {
    constants: Uint32Array.from(primes, (prime) => part(Math.cbrt(prime))),
    start: Uint32Array.from(primes.slice(0, 8), (prime) => part(Math.sqrt(prime))),
  };
}
