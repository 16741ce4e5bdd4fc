import { unknown } from "../../base/quantity/index.ts";
import { MEASURE_NAMES, MEASURE_UNITS, type Measures } from "../../flight/analysis/measures.ts";
import type { KeptFlight } from "./entry.ts";
import { bookSentences } from "./sentences.ts";

/** Hex digest (SHA-256) of bytes or of a text as UTF-8, handed in so that the core needs no crypto. */
export type Digest = (data: string | Uint8Array) => string;

/** A flight's file, or why it cannot be used. */
export type ReadEntry =
  | { readonly state: "read"; readonly entry: KeptFlight }
  | { readonly state: "damaged"; readonly why: string };

/** The text of a flight's file: readable JSON whose last key is the checksum over all the others. */
export function entryText(entry: KeptFlight, digest: Digest): string {
  return `${JSON.stringify({ ...entry, checksum: digest(JSON.stringify(entry)) }, null, 1)}\n`;
}

/** Reads a flight's file. Blanks and line ends do not matter to the checksum, any changed value does. */
export function readEntry(text: string, digest: Digest): ReadEntry {
  const value = objectOf(text);
  if (value === null) return { state: "damaged", why: bookSentences.notJson() };
  const { checksum, ...entry } = value;
  if (checksum !== digest(JSON.stringify(entry))) {
    return { state: "damaged", why: bookSentences.checksumWrong() };
  }
  const reader = READERS[String(entry.version)];
  if (entry.format !== "tallywatt/flight" || reader === undefined) {
    return { state: "damaged", why: bookSentences.notAFlight() };
  }
  return { state: "read", entry: reader(entry as unknown as KeptFlight) };
}

/** How an entry of each format version becomes one of today; a new version adds a line and keeps the old. */
const READERS: Readonly<Record<string, (entry: KeptFlight) => KeptFlight>> = {
  1: (entry) => ({ ...entry, check: { ...entry.check, measures: withEveryMeasure(entry.check.measures) } }),
};

/** A measure that the release of that day did not know is unknown, not absent. */
export function withEveryMeasure(measures: Partial<Measures>): Measures {
  const missing = MEASURE_NAMES.filter((name) => measures[name] === undefined);
  if (missing.length === 0) return measures as Measures;
  const filled = missing.map((name) => [name, unknown(MEASURE_UNITS[name], bookSentences.olderRelease())]);
  return { ...Object.fromEntries(filled), ...measures } as Measures;
}

export function objectOf(text: string): Record<string, unknown> | null {
  try {
    const value: unknown = JSON.parse(text);
    return typeof value === "object" && value !== null && !Array.isArray(value)
      ? (value as Record<string, unknown>)
      : null;
  } catch {
    return null;
  }
}
