import { describe, expect, it } from "vitest";
import { type KnownQuantity, known, unknown } from "../../../src/base/quantity/index.ts";
import { type CurrentEvidence, currentDoubt } from "../../../src/flight/analysis/currentDoubt.ts";
import {
  CHARGE_UNLIKE_REST_VOLTS,
  CURRENT_NOT_LOGGED,
  chargeLeftOpen,
  chargeNotKnown,
  chargeOnlyBounded,
} from "../../../src/flight/analysis/currentDoubtSentences.ts";

const ACCURACY_PCT = 2;
const SOUND: CurrentEvidence = {
  complete: true,
  measures: {
    chargeUsedMah: known(2000, 40, "mAh", "measured"),
    chargeCoveredMah: known(2000, 40, "mAh", "measured"),
    peakCurrentA: known(50, 1, "A", "measured"),
  },
};
const atLeast = (value: number, unit: string, why?: string): KnownQuantity => ({
  ...{ value, low: value, high: null, unit, basis: "measured", bound: "atLeast" },
  ...(why !== undefined && { why }),
});
const doubt = (measures: Partial<CurrentEvidence["measures"]>, more: Partial<CurrentEvidence> = {}) =>
  currentDoubt({ ...SOUND, ...more, measures: { ...SOUND.measures, ...measures } }, ACCURACY_PCT);

describe("the current of a flight", () => {
  it("is believed where nothing speaks against it", () => {
    expect(doubt({})).toBeNull();
    expect(doubt({ chargeUsedMah: known(2000, 239, "mAh", "estimated") })).toBeNull();
  });
  it("is doubted when the charge is unknown, estimated, only bounded or open by holes", () => {
    expect(doubt({ chargeUsedMah: unknown("mAh", "the sensor is dead") })).toBe(
      chargeNotKnown("the sensor is dead"),
    );
    const peakCurrentA = known(50, 15, "A", "estimated");
    const chargeCoveredMah = unknown("mAh", "no current");
    expect(doubt({ peakCurrentA, chargeCoveredMah })).toBe(CURRENT_NOT_LOGGED);
    expect(doubt({ chargeUsedMah: atLeast(2000, "mAh", "it clips") })).toBe(chargeOnlyBounded("it clips"));
    expect(doubt({ chargeUsedMah: known(2000, 244, "mAh", "estimated") })).toBe(chargeLeftOpen(10.2));
  });
  it("is doubted when the charge left does not fit the resting volts, marked on the flight or on its load", () => {
    expect(doubt({}, { isChargeDoubtful: true })).toBe(CHARGE_UNLIKE_REST_VOLTS);
    expect(doubt({}, { load: { isChargeDoubtful: true } })).toBe(CHARGE_UNLIKE_REST_VOLTS);
    expect(doubt({}, { load: {} })).toBeNull();
  });
  it("is believed in a log that merely ends under power, unless its sensor clips", () => {
    const chargeUsedMah = atLeast(2000, "mAh", "the log ends under power");
    expect(doubt({ chargeUsedMah }, { complete: false })).toBeNull();
    const peakCurrentA = atLeast(50, "A", "the log is cut");
    expect(doubt({ chargeUsedMah, peakCurrentA }, { complete: false })).toBeNull();
    const chargeCoveredMah = atLeast(2000, "mAh", "it clips");
    expect(doubt({ chargeUsedMah, chargeCoveredMah }, { complete: false })).toBe(
      chargeOnlyBounded("it clips"),
    );
  });
});
