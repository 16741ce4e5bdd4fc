import { describe, expect, it } from "vitest";
import { atLeast } from "../../../src/base/quantity/index.ts";
import { bookSentences, calibrateCurrent } from "../../../src/season/logbook/index.ts";
import { seededRandom } from "../../generator/random.ts";
import { type EntryPlan, entryWith } from "./entries.ts";

/** Flights whose charger says `ratio` times what was logged. */
function flightsWith(ratios: readonly number[], more: EntryPlan = {}) {
  return ratios.map((ratio, at) =>
    entryWith({
      flight: `f${at}`,
      sequence: at + 1,
      ...more,
      given: { putBackMah: 2000 * ratio, putBackFlights: [`f${at}`], ...more.given },
    }),
  );
}

describe("calibrateCurrent", () => {
  it("needs two put-backs", () => {
    expect(calibrateCurrent([])).toBeNull();
    expect(calibrateCurrent(flightsWith([1.03]))).toBeNull();
    expect(calibrateCurrent(flightsWith([1.03, 1.03]))?.putBacks).toBe(2);
  });

  it("takes the mean log ratio, and never claims more than the charger's own accuracy", () => {
    const many = calibrateCurrent(flightsWith(new Array(40).fill(1.05)));
    expect(many?.gain).toBeCloseTo(1.05, 12);
    expect((many?.high ?? 0) / (many?.gain ?? 1)).toBeGreaterThan(1.02);
    expect(many?.isApplied).toBe(true);
    expect(calibrateCurrent(flightsWith([1.005, 1.01, 1.0]))?.isApplied).toBe(false);
  });

  it("corrects nothing when the put-backs do not agree with each other", () => {
    const mixed = calibrateCurrent(flightsWith([0.64, 0.91]));
    expect(mixed).toMatchObject({ isApplied: false, isScattered: true });
    expect(calibrateCurrent(flightsWith([0.9, 0.92]))).toMatchObject({ isApplied: true, isScattered: false });
  });

  it("holds the true gain in at least 95 % of sensors and chargers", () => {
    const random = seededRandom(20260614);
    let held = 0;
    const trials = 1000;
    for (let trial = 0; trial < trials; trial += 1) {
      const trueGain = random.between(0.93, 1.07);
      const charger = 1 + 0.01 * random.normal();
      const count = 2 + (trial % 6);
      const ratios = Array.from({ length: count }, () => trueGain * charger * (1 + 0.01 * random.normal()));
      const found = calibrateCurrent(flightsWith(ratios));
      if (found && found.low <= trueGain && trueGain <= found.high) held += 1;
    }
    console.log(`seed 20260614: the gain's interval held ${held} of ${trials}`);
    expect(held / trials).toBeGreaterThan(0.95);
  });

  it("counts one charge after two flights once, by both their charges", () => {
    const given = { putBackMah: 2400, putBackFlights: ["a", "b"] };
    const pair = [
      entryWith({ flight: "a", chargeUsedMah: 1200 }),
      entryWith({ flight: "b", sequence: 2, chargeUsedMah: 1130, given }),
    ];
    const other = entryWith({ flight: "c", sequence: 3, given: { putBackMah: 2060, putBackFlights: ["c"] } });
    const found = calibrateCurrent([...pair, other]);
    expect(found?.putBacks).toBe(2);
    expect(found?.gain).toBeCloseTo(Math.sqrt((2400 / 2330) * 1.03), 12);
  });

  it.each([
    ["a log that is cut", { complete: false }, bookSentences.chargeNotWhole()],
    [
      "a charge that is only a bound",
      { chargeUsedMah: atLeast(2000, 1900, "mAh", "measured", "cut") },
      bookSentences.chargeNotWhole(),
    ],
    ["a pack that was not full", { given: { startPct: 80 } }, bookSentences.startNotFull()],
    ["a put-back of another pack", { given: { putBackMah: 4000 } }, bookSentences.putBackMisfit(4000, 2000)],
    [
      "a flight of its charge that is gone",
      { given: { putBackFlights: ["f0", "lost"] } },
      bookSentences.putBackFlightMissing("lost"),
    ],
    ["another scale of the sensor", { currentScale: 1.1 }, bookSentences.otherScale(1.1, 1)],
  ] as const)("leaves out %s and says why", (_what, plan, why) => {
    const [odd] = flightsWith([1.03], plan as EntryPlan);
    const others = flightsWith([1.03, 1.03, 1.03]).slice(1);
    const found = calibrateCurrent(odd ? [odd, ...others] : others);
    expect(found?.putBacks).toBe(2);
    expect(found?.leftOut).toContainEqual({ flight: "f0", why });
  });

  it("says in words what it found", () => {
    const said = (gain: number, low: number, high: number, isApplied: boolean, isScattered = false) =>
      bookSentences.calibrated({ gain, low, high, putBacks: 6, isApplied, isScattered });
    expect(said(1.0288, 1.005, 1.05, true)).toContain("reads 2.8 % low (0.5 to 4.8 %)");
    expect(said(0.95, 0.93, 0.97, true)).toContain("reads 5.3 % high (3.1 to 7.5 %)");
    expect(said(1.01, 0.99, 1.03, false)).toContain("0.990 to 1.030 times");
    expect(said(0.76, 0.59, 0.97, false, true)).toContain("Nothing is corrected");
  });
});
