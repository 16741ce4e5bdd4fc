import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { NO_FACTS } from "../../../src/aircraft/facts.ts";
import { coveredCharge } from "../../../src/flight/analysis/charge.ts";
import { coveredEnergy } from "../../../src/flight/analysis/energy.ts";
import { lowestPackVoltage, peakCurrent, peakTemperature } from "../../../src/flight/analysis/peaks.ts";
import { NO_READING_OPTIONS, readLog } from "../../../src/log/reading/index.ts";
import { recordLog } from "../../../src/log/recording/index.ts";
import { UNCORRECTED } from "../../support/readLogOf.ts";
import { sharedFolder, withShared } from "../../support/shared.ts";

interface Expected {
  readonly energy_wh: number;
  readonly charge_mah: number;
  readonly gaps?: number;
  readonly gap_s?: number;
  readonly rows?: number;
  readonly duration_s?: number;
  readonly min_v?: number;
  readonly max_i?: number;
  readonly max_temp_c?: number;
}

interface Case {
  readonly file: string;
  readonly verdict: string;
  readonly expect: Expected | null;
  readonly tol: number;
  readonly must_report: readonly string[];
}

/** Damaged logs with the sums each must give; the sentences on flights ("starts") come from a later step. */
const folder = sharedFolder();
const FLIGHT_STEP_WORDS = ["starts"];

function cases(): Case[] {
  if (folder === null) return [];
  const manifest = JSON.parse(readFileSync(join(folder, "corpus/manifest.json"), "utf8"));
  return (manifest.cases as Case[]).filter((one) => ["ok", "note", "warn"].includes(one.verdict));
}

function recordingOfFile(file: string) {
  const outcome = readLog(
    readFileSync(join(folder!, "corpus", file)),
    { ...NO_READING_OPTIONS, cells: 12 },
    [],
  );
  if (outcome.state !== "read") throw new Error(outcome.notices.map((notice) => notice.text).join(" "));
  return recordLog(outcome.log, UNCORRECTED);
}

function expectNear(got: number | null, wanted: number | undefined, tolerance: number): void {
  if (wanted === undefined) return;
  expect(Math.abs((got ?? Number.NaN) - wanted)).toBeLessThanOrEqual(tolerance * Math.abs(wanted) + 1e-9);
}

describe.skipIf(folder === null)(withShared("damaged logs"), () => {
  test.each(cases())(
    "$file gives its sums and says what was done",
    ({ file, expect: wanted, tol, must_report }) => {
      const recording = recordingOfFile(file);
      const rows = { firstRow: 0, lastRow: recording.rows - 1 };
      const charge = coveredCharge(recording, rows, NO_FACTS).value;
      const energy = coveredEnergy(recording, rows, NO_FACTS).value;
      if (wanted === null) expect([charge, energy]).toEqual([null, null]);
      else {
        expectNear(charge, wanted.charge_mah, tol);
        expectNear(energy, wanted.energy_wh, tol);
        expectNear(recording.rowsUsed, wanted.rows, tol);
        expectNear(recording.durationS, wanted.duration_s, Math.max(tol, 1e-6));
        expectNear(lowestPackVoltage(recording, rows, NO_FACTS).value, wanted.min_v, tol);
        expectNear(peakCurrent(recording, rows, NO_FACTS).value, wanted.max_i, tol);
        expectNear(
          peakTemperature(recording, "controllerTemperature", rows, NO_FACTS).value,
          wanted.max_temp_c,
          tol,
        );
        if (wanted.gaps !== undefined) expect(recording.holes).toHaveLength(wanted.gaps);
        const holeS = recording.holes.reduce((sum, hole) => sum + hole.endS - hole.startS, 0);
        expectNear(holeS, wanted.gap_s, 1e-6);
      }
      const said = recording.notices.map((notice) => notice.text.toLowerCase()).join("\n");
      for (const words of must_report) {
        if (!FLIGHT_STEP_WORDS.includes(words)) expect(said).toContain(words.toLowerCase());
      }
    },
  );

  test("a log without fault brings no notice", () => {
    expect(recordingOfFile("a00_clean.csv").notices).toEqual([]);
    expect(recordingOfFile("e13_slow_temp_hold.csv").notices).toEqual([]);
  });
});
