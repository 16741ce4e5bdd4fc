import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { describe, expect, test } from "vitest";
import { NO_FACTS } from "../../../src/aircraft/facts.ts";
import { analyseRecording } from "../../../src/flight/analysis/index.ts";
import { readLog } from "../../../src/log/reading/index.ts";
import { recordLog } from "../../../src/log/recording/index.ts";
import { sharedFolder, withShared } from "../../support/shared.ts";

const folder = sharedFolder();
const OPTIONS = {
  columns: new Map(),
  units: new Map(),
  rateHz: null,
  decimalMark: null,
  delimiter: null,
  dateOrder: null,
  cells: null,
  polePairs: null,
};

/** Logged flights of Rodrigues et al., Scientific Data 2021, doi 10.1184/R1/12683453. */
function analysedFlights(name: string) {
  const outcome = readLog(readFileSync(resolve(folder ?? "", "flights", `${name}.csv`)), OPTIONS, []);
  if (outcome.state !== "read") throw new Error(`${name}.csv was not read: ${outcome.state}`);
  const recording = recordLog(outcome.log, NO_FACTS.sensors);
  return analyseRecording(recording, NO_FACTS, { ambientC: null, startPct: null });
}

describe.skipIf(folder === null)(withShared("logged flights of a small electric aircraft"), () => {
  test.each(["1", "108", "204", "278", "279"])("%s is one complete flight", (name) => {
    expect(analysedFlights(name).map(({ kind, complete }) => ({ kind, complete }))).toEqual([
      { kind: "flight", complete: true },
    ]);
  });

  test.each([
    ["5", "starts-under-power"],
    ["250", "ends-under-power"],
  ])("%s is not complete: %s", (name, code) => {
    const [flight, ...others] = analysedFlights(name);
    expect(others).toEqual([]);
    expect(flight).toMatchObject({ kind: "flight", complete: false });
    expect(flight!.notices.map((notice) => notice.code)).toEqual([code]);
    expect(flight!.measures.flightTimeS).toMatchObject({ bound: "atLeast" });
  });

  test("215 is a bench run without a flight time", () => {
    const [run, ...others] = analysedFlights("215");
    expect(others).toEqual([]);
    expect(run).toMatchObject({ kind: "benchRun", complete: true });
    expect(run!.measures.flightTimeS.value).toBeNull();
    expect(run!.measures.peakCurrentA.value).toBeCloseTo(8.063099, 6);
    expect(run!.measures.minPackV.value).toBeCloseTo(24.888264, 6);
  });
});
