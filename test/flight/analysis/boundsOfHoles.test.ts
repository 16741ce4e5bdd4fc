import { expect, test } from "vitest";
import { NO_FACTS } from "../../../src/aircraft/facts.ts";
import { analyseRecording } from "../../../src/flight/analysis/index.ts";
import { recordingOf } from "../../support/recordingOf.ts";
import { FLIGHT, REST, syntheticRecording, TAXI, withMissing } from "../../support/syntheticRecording.ts";

const FACTS = { ...NO_FACTS, controller: { ...NO_FACTS.controller, continuousA: 40 } };
const measuresOf = (recording: Parameters<typeof analyseRecording>[0]) =>
  analyseRecording(recording, FACTS, { ambientC: null, startPct: null })[0]!.measures;

test("time over the rating may have passed in a hole: the upper end reaches that far", () => {
  const whole = syntheticRecording([REST, TAXI, FLIGHT, TAXI, { ...REST, lengthS: 30 }]);
  const { overRatingS } = measuresOf(withMissing(whole, "current", 60, 80));
  expect(overRatingS).toMatchObject({ value: 0, low: 0, bound: "interval" });
  expect((overRatingS as { high: number }).high).toBeGreaterThanOrEqual(20);
});

test("a log of three lines that ends under power has no negative lower bound of charge", () => {
  const channels = new Map([
    ["packVoltage", Float64Array.of(25, 25, 24)],
    ["current", Float64Array.of(0, 0, 20)],
  ] as const);
  const { chargeUsedMah } = measuresOf(recordingOf({ timeS: Float64Array.of(0, 1, 2), channels }));
  expect((chargeUsedMah as { low: number }).low).toBeGreaterThanOrEqual(0);
});
