import { seededRandom } from "../generator/random.ts";
import { cutTrials } from "./cuts.ts";
import { DEFECT_NAMES, defectTrial } from "./defects.ts";
import { DIALECTS, dialectTrial } from "./dialects.ts";
import { randomLogTrial } from "./randomLogs.ts";
import { RELATION_NAMES, relationTrial } from "./relations.ts";
import { bothWaysTrial } from "./tables.ts";
import { mutationTrial } from "./underFire.ts";
import { wholeCheckTrial } from "./wholeCheck.ts";

/** One kind of fire. Seeds count from 0; the trial of a seed is the same on every machine. */
export interface Family {
  /** Trials of a seed and what went wrong, null if nothing. */
  readonly trial: (seed: number) => { readonly trials: number; readonly fault: string | null };
  /** Seeds of a short run beside the other tests, and of a long one. */
  readonly few: number;
  readonly many: number;
}

const single = (fault: (seed: number) => string | null): Family["trial"] => {
  return (seed) => ({ trials: 1, fault: fault(seed) });
};

function turn<Item>(items: readonly Item[], seed: number): Item {
  return items[seed % items.length]!;
}

export const FAMILIES: Readonly<Record<string, Family>> = {
  "mutated logs": {
    trial: single((seed) => mutationTrial(seed).fault),
    few: 5000,
    many: 1_000_000,
  },
  "whole check of mutated logs": { trial: single(wholeCheckTrial), few: 150, many: 20_000 },
  "long mutated logs, plain rows as numbers and as text": {
    trial: single(bothWaysTrial),
    few: 150,
    many: 20_000,
  },
  "one-defect logs": {
    trial: single((seed) => defectTrial(turn(DEFECT_NAMES, seed), seededRandom(seed))),
    few: 2000,
    many: 12_000,
  },
  "cuts of a clean log": {
    trial: (seed) => {
      const { cuts, fault } = cutTrials(seededRandom(seed), seed === 0 ? 5 : 1);
      return { trials: cuts, fault };
    },
    few: 1,
    many: 6,
  },
  dialects: {
    trial: single((seed) => dialectTrial(turn(DIALECTS, seed), seededRandom(seed))),
    few: DIALECTS.length,
    many: 20 * DIALECTS.length,
  },
  "same flight in other clothes": {
    trial: single((seed) => relationTrial(turn(RELATION_NAMES, seed), seededRandom(seed))),
    few: 20 * RELATION_NAMES.length,
    many: 500 * RELATION_NAMES.length,
  },
  "random logs against whole-number sums": {
    trial: single((seed) => randomLogTrial(seededRandom(seed))),
    few: 1000,
    many: 20_000,
  },
};

/** A trial that never throws: an exception is a fault like any other. */
export function caught(family: Family, seed: number): ReturnType<Family["trial"]> {
  try {
    return family.trial(seed);
  } catch (error) {
    return {
      trials: 1,
      fault: `threw ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`,
    };
  }
}
