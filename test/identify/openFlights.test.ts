import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { describe, expect, it } from "vitest";
import { NO_FACTS } from "../../src/aircraft/facts.ts";
import { tooShortRun } from "../../src/flight/analysis/identifiedSentences.ts";
import { identifyPackResistance } from "../../src/flight/analysis/packResistance.ts";
import { NO_READING_OPTIONS, readLog } from "../../src/log/reading/index.ts";
import { recordLog } from "../../src/log/recording/index.ts";
import { sharedFolder, withShared } from "../support/shared.ts";

const folder = sharedFolder();

function resistanceOf(name: string) {
  const read = readLog(readFileSync(resolve(folder!, "flights", name)), NO_READING_OPTIONS, []);
  if (read.state !== "read") throw new Error(`${name} was not read`);
  const recording = recordLog(read.log, NO_FACTS.sensors);
  return identifyPackResistance(recording, { firstRow: 0, lastRow: recording.rows - 1 }, NO_FACTS);
}

describe.skipIf(folder === null)(withShared("pack resistance of recorded flights"), () => {
  it.each(["1.csv", "5.csv", "108.csv", "204.csv", "250.csv", "278.csv", "279.csv"])(
    "%s: given, with both estimators and their difference",
    (name) => {
      const { after1S, byStepsMohm, differenceMohm } = resistanceOf(name);
      console.log(name, after1S.value, "by steps", byStepsMohm, "difference", differenceMohm);
      for (const mohm of [after1S.value, byStepsMohm]) {
        expect(mohm).toBeGreaterThan(30);
        expect(mohm).toBeLessThan(140);
      }
      expect(differenceMohm).toBeCloseTo(after1S.value! - byStepsMohm!, 9);
    },
  );

  it("215.csv, a run of the motor too short to tell: null with the reason", () => {
    expect(resistanceOf("215.csv").after1S).toEqual({ value: null, unit: "mohm", why: tooShortRun(0, 10) });
  });
});
