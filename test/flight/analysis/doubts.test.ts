import { describe, expect, it } from "vitest";
import { NO_BUDGET } from "../../../src/aircraft/budget.ts";
import { NO_FACTS } from "../../../src/aircraft/facts.ts";
import { quantityText } from "../../../src/base/quantity/index.ts";
import { speedDoubt } from "../../../src/flight/analysis/identifiedSentences.ts";
import { analyseRecording } from "../../../src/flight/analysis/index.ts";
import { judgeFlight } from "../../../src/flight/judgement/index.ts";
import { randomFlight } from "../../identify/randomFlight.ts";
import { recordingOf } from "../../support/recordingOf.ts";
import { FLIGHT, REST, syntheticRecording } from "../../support/syntheticRecording.ts";

const DAY = { ambientC: null, startPct: null };

/** A flight with a charge counter that reads `factor` times what flows; from a full count down if `isDown`. */
function counted(factor: number, isDown = false) {
  const plain = syntheticRecording([REST, FLIGHT, REST]);
  const amps = plain.channels.get("current")!.map((value, row) => value + 0.1 * (row % 2));
  let mah = 0;
  const counter = amps.map((value) => {
    mah += (factor * value * 0.2) / 3.6;
    return Math.round(isDown ? 5000 - mah : mah);
  });
  const channels = new Map([
    ...plain.channels,
    ["current", amps] as const,
    ["chargeCounter", counter] as const,
  ]);
  return analyseRecording(recordingOf({ timeS: plain.timeS, channels }), NO_FACTS, DAY)[0]!;
}

describe("the charge counter against the sum of the current", () => {
  it.each([false, true])(
    "agrees within the sensor's accuracy and nothing is said (counting down: %s)",
    (isDown) => {
      expect(counted(1.03, isDown).notices).toEqual([]);
    },
  );

  it.each([false, true])("disagrees beyond it: said, nothing replaced (counting down: %s)", (isDown) => {
    const flight = counted(1.12, isDown);
    expect(flight.notices.map(({ code, severity }) => [code, severity])).toEqual([
      ["charge-counter-differs", "warning"],
    ]);
    expect(flight.measures.chargeUsedMah).toEqual(counted(1).measures.chargeUsedMah);
  });
});

describe("a charge left that cannot be", () => {
  const used = (capacityMah: number) => {
    const facts = { ...NO_FACTS, pack: { ...NO_FACTS.pack, cells: 8, capacityMah } };
    return analyseRecording(syntheticRecording([REST, FLIGHT, REST]), facts, DAY)[0]!.notices;
  };

  it("is questioned by itself", () => {
    expect(used(5000)).toEqual([]);
    const [notice] = used(800);
    expect(notice).toMatchObject({ code: "charge-left-doubtful", severity: "warning" });
    expect(notice!.text).toContain("pack.capacityMah");
  });
});

describe("resting volts after landing against the charge left", () => {
  const noticed = (seed: number, capacityShare: number) => {
    const { recording, facts, day } = randomFlight(seed, { rateHz: 2 });
    const capacityMah = facts.pack.capacityMah! * capacityShare;
    const stated = { ...facts, pack: { ...facts.pack, capacityMah } };
    const { notices } = analyseRecording(recording, stated, day)[0]!;
    return notices.filter(({ code }) => code === "rest-volts-differ").length;
  };
  const SEEDS = [71, 72, 73, 74, 75, 76];

  it("says nothing while both can be right, and warns when the capacity is far from what is stated", () => {
    expect(SEEDS.map((seed) => noticed(seed, 1))).toEqual([0, 0, 0, 0, 0, 0]);
    expect(SEEDS.map((seed) => noticed(seed, 3))).toEqual([1, 1, 1, 1, 1, 1]);
    expect(SEEDS.map((seed) => noticed(seed, 0.6))).toEqual([1, 1, 1, 1, 1, 1]);
  });
});

describe("speeds of a log with a wrong setting", () => {
  const measuresWith = (departures: object) => {
    const { recording, facts, day } = randomFlight(305, { departures, script: { flightS: 60 }, rateHz: 5 });
    const propeller = { ...facts.propeller, maxRpm: 9000 };
    const whole = { ...facts, name: "Test", propeller };
    const { measures } = analyseRecording(recording, whole, day)[0]!;
    const budget = { ...NO_BUDGET, planned: { ...NO_BUDGET.planned, staticRpm: 6000 } };
    const verdicts = judgeFlight(measures, "flight", whole, budget);
    return { measures, ofSpeed: verdicts.filter(({ line }) => line === "peakRpm" || line === "staticRpm") };
  };

  it("are shown as logged but not judged, with the reason", () => {
    const { measures, ofSpeed } = measuresWith({ speedFactor: 2 });
    expect(measures.peakRpm.value).not.toBeNull();
    expect(quantityText(measures.peakRpm)).toContain("(doubtful)");
    expect(ofSpeed.map(({ verdict }) => verdict)).toEqual(["not judged", "not judged"]);
    expect(ofSpeed[0]!.text).toMatch(/2 times too high/);
  });

  it("are judged where nothing speaks against them, and where only kv is wrong", () => {
    for (const departures of [{}]) {
      const { ofSpeed } = measuresWith(departures);
      expect(ofSpeed.map(({ verdict }) => verdict)).not.toContain("not judged");
    }
    const kv = { kind: "kv", factor: 1.2, words: "kv near 300" } as const;
    const twice = { kind: "speedSetting", factor: 2, words: "set for 1 blade" } as const;
    expect(speedDoubt(kv, [kv])).toBeNull();
    expect(speedDoubt(twice, [twice])).toBe("the logged speed is 2 times too high");
    expect(speedDoubt(null, [twice, kv])).toContain("may be 2 times too high, or right");
    expect(speedDoubt(null, [])).toContain("do not agree");
  });
});
