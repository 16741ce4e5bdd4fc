import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { NO_FACTS } from "../../../src/aircraft/facts.ts";
import { coveredCharge } from "../../../src/flight/analysis/charge.ts";
import { coveredEnergy } from "../../../src/flight/analysis/energy.ts";
import { lowestPackVoltage, peakCurrent, peakPower } from "../../../src/flight/analysis/peaks.ts";
import { NO_READING_OPTIONS, readLog } from "../../../src/log/reading/index.ts";
import { recordLog } from "../../../src/log/recording/index.ts";
import { UNCORRECTED } from "../../support/readLogOf.ts";
import { sharedFolder, withShared } from "../../support/shared.ts";

/** Recordings of a small electric aircraft: Rodrigues et al., Scientific Data 2021, doi 10.1184/R1/12683453. */
const folder = sharedFolder();

function reference(): Record<string, string>[] {
  if (folder === null) return [];
  const [header, ...lines] = readFileSync(join(folder, "flights/reference.csv"), "utf8").trim().split("\n");
  const names = header!.split(",");
  return lines.map((line) => Object.fromEntries(line.split(",").map((cell, i) => [names[i]!, cell])));
}

describe.skipIf(folder === null)(withShared("recorded flights"), () => {
  test.each(reference())("$file: sums within 0.5 %, every peak kept, few cells masked", (wanted) => {
    const outcome = readLog(readFileSync(join(folder!, "flights", wanted.file!)), NO_READING_OPTIONS, []);
    if (outcome.state !== "read") throw new Error(outcome.notices.map((notice) => notice.text).join(" "));
    const recording = recordLog(outcome.log, UNCORRECTED);
    const rows = { firstRow: 0, lastRow: recording.rows - 1 };
    const share = (got: number | null, name: string) =>
      Math.abs((got ?? Number.NaN) / Number(wanted[name]) - 1);
    expect(share(coveredCharge(recording, rows, NO_FACTS).value, "mAh_gap2")).toBeLessThan(0.005);
    expect(share(coveredEnergy(recording, rows, NO_FACTS).value, "Wh_gap2")).toBeLessThan(0.005);
    expect(peakCurrent(recording, rows, NO_FACTS).value).toBeCloseTo(Number(wanted.I_max_A), 5);
    expect(lowestPackVoltage(recording, rows, NO_FACTS).value).toBeCloseTo(Number(wanted.V_min_V), 5);
    expect(peakPower(recording, rows, NO_FACTS).value).toBeCloseTo(Number(wanted.P_max_W), 5);
    expect(new Set(recording.repairs.map((repair) => repair.row)).size).toBeLessThan(0.005 * recording.rows);
    expect(recording.holes).toHaveLength(Number(wanted.gaps_over_2s));
    expect(recording.dead).toEqual([]);
  });
});
