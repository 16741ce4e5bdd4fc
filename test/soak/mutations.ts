import type { Random } from "../generator/random.ts";
import { encoded, WRITTEN_ENCODINGS } from "./encodings.ts";

/** Pieces that mean something to a reader of logs. */
const PIECES: readonly string[] = [
  ...[",", ";", "\t", "|", " ", '"', '""', "'", "\n", "\r", "\r\n", "\r\r\n", "\n\n"],
  ...["#", "//", "%", "-", "+", ".", "..", "e", "e9", "E-3", "1e999", "-1e999", "0x1f", "NaN", "nan", "inf"],
  ...["Infinity", "-Infinity", "null", "N/A", "#VALUE!", "ERR", "-127", "65535", "6553.5", "-0.0", "00012"],
  ...["\u2212", "\u00a0", "\u202e", "\ufeff", "\ufffd", "\0", "\u001b[31m", "\u0007", "°", "µ", "\u{1f6e9}"],
  ...["sep=;\n", "time_s", "current_a", "pack_v", "__proto__", "constructor", "=1+1", "@SUM(A1)", "12:00:00"],
  ...["2026-05-01T10:00:00Z", "03/04/2026", "1,234.5", "1.234,5", "12 345", "9".repeat(40), ",".repeat(30)],
];

type Mutation = (bytes: Uint8Array, random: Random) => Uint8Array;

/** `bytes` with those from `start` to `end` replaced. */
export function spliced(bytes: Uint8Array, start: number, end: number, put: ArrayLike<number>): Uint8Array {
  const result = new Uint8Array(bytes.length - (end - start) + put.length);
  result.set(bytes.subarray(0, start));
  result.set(put, start);
  result.set(bytes.subarray(end), start + put.length);
  return result;
}

const place = (bytes: Uint8Array, random: Random): number => random.whole(0, bytes.length);

/** A stretch of the file, at most `most` bytes. */
function stretch(bytes: Uint8Array, random: Random, most: number): readonly [number, number] {
  const start = place(bytes, random);
  return [start, Math.min(bytes.length, start + random.whole(1, most))];
}

/** Start of each line, and the end of the file. */
function lineStarts(bytes: Uint8Array): readonly number[] {
  const starts = [0];
  bytes.forEach((byte, at) => {
    if (byte === 0x0a && at + 1 < bytes.length) starts.push(at + 1);
  });
  return [...starts, bytes.length];
}

function someLine(bytes: Uint8Array, random: Random): readonly [number, number] {
  const starts = lineStarts(bytes);
  const line = random.whole(0, starts.length - 2);
  return [starts[line]!, starts[line + 1]!];
}

const MUTATIONS: Readonly<Record<string, Mutation>> = {
  "another byte": (bytes, random) => {
    const at = place(bytes, random);
    return at === bytes.length ? bytes : spliced(bytes, at, at + 1, [random.whole(0, 255)]);
  },
  "a bit turned": (bytes, random) => {
    const at = place(bytes, random);
    return at === bytes.length ? bytes : spliced(bytes, at, at + 1, [bytes[at]! ^ (1 << random.whole(0, 7))]);
  },
  "bytes lost": (bytes, random) => spliced(bytes, ...stretch(bytes, random, 40), []),
  "bytes twice": (bytes, random) => {
    const [start, end] = stretch(bytes, random, 200);
    return spliced(bytes, end, end, bytes.subarray(start, end));
  },
  "a piece put in": (bytes, random) => {
    const at = place(bytes, random);
    return spliced(bytes, at, at, new TextEncoder().encode(random.pick(PIECES)));
  },
  "a piece in place of bytes": (bytes, random) =>
    spliced(bytes, ...stretch(bytes, random, 8), new TextEncoder().encode(random.pick(PIECES))),
  "a line twice": (bytes, random) => {
    const [start, end] = someLine(bytes, random);
    return spliced(bytes, end, end, bytes.subarray(start, end));
  },
  "a line lost": (bytes, random) => spliced(bytes, ...someLine(bytes, random), []),
  "a line elsewhere": (bytes, random) => {
    const [start, end] = someLine(bytes, random);
    const line = bytes.slice(start, end);
    const others = spliced(bytes, start, end, []);
    const [at] = someLine(others.length === 0 ? bytes : others, random);
    return spliced(others, at, at, line);
  },
  "an erased stretch": (bytes, random) => {
    const [start, end] = stretch(bytes, random, 512);
    const put = new Uint8Array(end - start).fill(random.pick([0x00, 0xff]));
    return spliced(bytes, start, end, put);
  },
  "noise for a stretch": (bytes, random) => {
    const [start, end] = stretch(bytes, random, 64);
    return spliced(
      bytes,
      start,
      end,
      Array.from({ length: end - start }, () => random.whole(0, 255)),
    );
  },
  "power lost": (bytes, random) => bytes.slice(0, place(bytes, random)),
  "the head lost": (bytes, random) => bytes.slice(random.whole(0, Math.min(bytes.length, 200))),
  "two logs in one": (bytes, random) => {
    const at = place(bytes, random);
    return spliced(bytes, at, at, bytes);
  },
  "one character for another": (bytes, random) => {
    const from = random.pick([0x2c, 0x2e, 0x0a, 0x30, 0x31]);
    const to = random.pick([0x3b, 0x2c, 0x09, 0x20, 0x22, 0x0d, 0x2d, 0x39]);
    const start = place(bytes, random);
    return bytes.map((byte, at) => (byte === from && at >= start ? to : byte));
  },
  "another encoding": (bytes, random) =>
    encoded(new TextDecoder("latin1").decode(bytes), random.pick(WRITTEN_ENCODINGS)),
};

export interface Mutated {
  readonly bytes: Uint8Array;
  readonly how: readonly string[];
}

/** One to four mutations, one after the other. */
export function mutated(clean: Uint8Array, random: Random): Mutated {
  const how = Array.from({ length: random.whole(1, 4) }, () => random.pick(Object.keys(MUTATIONS)));
  return { how, bytes: how.reduce((bytes, name) => MUTATIONS[name]!(bytes, random), clean) };
}
