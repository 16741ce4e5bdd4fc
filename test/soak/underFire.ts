import { seededRandom } from "../generator/random.ts";
import { inventedNumber } from "./fidelity.ts";
import { flightNumbers } from "./flightNumbers.ts";
import { bytesOf, type Mark, plainTable, textOf } from "./logText.ts";
import { mutated } from "./mutations.ts";
import { readSums } from "./readSums.ts";
import { silentDifference } from "./silence.ts";
import { unsound } from "./soundness.ts";

/** Milliseconds that no short log may take; normal is 2. A guard against endless work, not a speed test. */
const LONGEST_MS = 5000;

const DIALECT_OF: readonly (readonly [string, Mark])[] = [
  [",", "."],
  [",", "."],
  [";", ","],
  [",", "."],
  ["\t", "."],
  [";", "."],
];

/** What one trial showed: null is right. `isCompared`: its sums could be held against those of the own reader. */
export interface Trial {
  readonly fault: string | null;
  readonly isCompared: boolean;
}

/** Everything that must hold for any bytes. */
export function trialOf(bytes: Uint8Array): Trial {
  const started = performance.now();
  try {
    const { outcome, sums } = readSums(bytes);
    const bad = unsound(outcome, sums) ?? (sums === null ? null : inventedNumber(bytes, sums.log));
    const silent = sums === null ? null : silentDifference(bytes, sums);
    const tookMs = performance.now() - started;
    const slow = tookMs > LONGEST_MS ? `took ${Math.round(tookMs)} ms` : null;
    const isCompared = sums !== null && silent !== "not comparable";
    return { fault: bad ?? (isCompared ? silent : null) ?? slow, isCompared };
  } catch (error) {
    return { fault: `threw ${error instanceof Error ? error.stack : String(error)}`, isCompared: false };
  }
}

/** Clean logs to mutate, made once: commas and points, and now and then another delimiter and mark. */
const CLEAN = Array.from({ length: 50 }, (_, log) => {
  const [delimiter, mark] = DIALECT_OF[log % DIALECT_OF.length]!;
  return bytesOf(textOf(plainTable(flightNumbers(seededRandom(log), 80), mark), delimiter));
});

/** One of the clean logs with one to four mutations, all from one seed. */
export function mutatedOf(seed: number) {
  const random = seededRandom(seed);
  return mutated(random.pick(CLEAN), random.fork("mutation"));
}

export function mutationTrial(seed: number): Trial {
  const { bytes, how } = mutatedOf(seed);
  const trial = trialOf(bytes);
  return { ...trial, fault: trial.fault === null ? null : `${how.join(", ")}: ${trial.fault}` };
}
