import { describe, expect, test } from "vitest";
import { NO_FACTS } from "../../../src/aircraft/facts.ts";
import { analyseRecording } from "../../../src/flight/analysis/index.ts";
import type { Recording } from "../../../src/log/recording/index.ts";
import {
  FLIGHT,
  REST,
  type Stretch,
  syntheticRecording,
  TAXI,
  withMissing,
} from "../../support/syntheticRecording.ts";

/** Take-off at 25 s, flight power to 145 s, motor stopped at 155 s. */
const STRETCHES: readonly Stretch[] = [REST, TAXI, FLIGHT, TAXI, { ...REST, lengthS: 30 }];
const whole = syntheticRecording(STRETCHES);
const measuresOf = (recording: Recording) =>
  analyseRecording(recording, NO_FACTS, { ambientC: null, startPct: null })[0]!.measures;
const truth = measuresOf(whole);

describe("volts that drop out", () => {
  test.each([
    [20, 60],
    [5, 50],
    [100, 158],
  ])("from %s to %s s change no time and no charge", (fromS, toS) => {
    const measures = measuresOf(withMissing(whole, "packVoltage", fromS, toS));
    for (const name of ["flightTimeS", "motorRunTimeS", "chargeUsedMah", "flightChargeMah"] as const) {
      expect(measures[name].value).toBeCloseTo(truth[name].value!, 6);
    }
  });
});
