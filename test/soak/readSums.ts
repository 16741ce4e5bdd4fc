import { NO_FACTS } from "../../src/aircraft/facts.ts";
import { coveredCharge } from "../../src/flight/analysis/charge.ts";
import { coveredEnergy } from "../../src/flight/analysis/energy.ts";
import {
  NO_READING_OPTIONS,
  type ReadingOptions,
  type ReadLog,
  type ReadOutcome,
  readLog,
} from "../../src/log/reading/index.ts";
import { type Recording, recordLog } from "../../src/log/recording/index.ts";
import type { Sums } from "./exactSums.ts";

export interface ReadSums extends Sums {
  readonly log: ReadLog;
  readonly recording: Recording;
}

/** What became of some bytes: the outcome of the reader, and where it read them the recording and its sums. */
export function readSums(
  bytes: Uint8Array,
  options: Partial<ReadingOptions> = {},
): { readonly outcome: ReadOutcome; readonly sums: ReadSums | null } {
  const outcome = readLog(bytes, { ...NO_READING_OPTIONS, ...options }, []);
  if (outcome.state !== "read") return { outcome, sums: null };
  const recording = recordLog(outcome.log, NO_FACTS.sensors);
  const all = { firstRow: 0, lastRow: recording.rows - 1 };
  const charge = coveredCharge(recording, all, NO_FACTS);
  const energy = coveredEnergy(recording, all, NO_FACTS);
  return {
    outcome,
    sums: {
      log: outcome.log,
      recording,
      chargeMah: charge.value ?? Number.NaN,
      energyWh: energy.value ?? Number.NaN,
    },
  };
}
