import { describe, expect, it } from "vitest";
import { chargeLimit, type LoggedLoad } from "../../../src/season/timer/index.ts";
import { LOGGED_FLIGHTS, SPREADS, scorePilots } from "./simulatedPilots.ts";

const LOAD: LoggedLoad = {
  flight: "one",
  climbS: 20,
  climbChargeMah: 300,
  rateMahPerS: 6,
  groundChargeMah: 100,
  approachS: 40,
  peakCurrentA: 60,
};
const CONDITIONS = {
  capacityMah: 5000,
  health: 1,
  startShare: 1,
  reserveShare: 0.25,
  gainStandardDeviation: 0,
};

describe("the touchdown that the charge allows", () => {
  it("is the sum it says: usable less climb over the bound rate, plus the climb", () => {
    const limit = chargeLimit([LOAD, LOAD, LOAD], CONDITIONS);
    expect(limit.usableMah).toBeCloseTo(5000 * 0.75 - 100 - 30 * 15, 9);
    expect(limit.touchdownByS).toBeCloseTo(20 + (3200 - 300) / limit.boundRateMahPerS, 9);
    // Three equal flights: spread pooled with a prior of 15 % worth 3: sqrt(3 * 0.15^2 / 5), t(0.95; 5) = 2.015048
    // (Student t table, NIST/SEMATECH e-Handbook 1.3.6.7.2).
    const spread = Math.sqrt((3 * 0.15 ** 2) / 5);
    expect(Math.log(limit.boundRateMahPerS / 6)).toBeCloseTo(2.015048 * spread * Math.sqrt(1 + 1 / 3), 6);
  });

  it("gets shorter with a doubtful sensor, less health, a pack not full, more reserve", () => {
    const base = chargeLimit([LOAD], CONDITIONS).touchdownByS;
    for (const change of [
      { gainStandardDeviation: 0.025 },
      { health: 0.9 },
      { startShare: 0.9 },
      { reserveShare: 0.3 },
    ]) {
      expect(chargeLimit([LOAD], { ...CONDITIONS, ...change }).touchdownByS).toBeLessThan(base);
    }
  });

  it("does not depend on how long the logged flights were, only on their rate", () => {
    const limit = chargeLimit([LOAD], CONDITIONS);
    expect(chargeLimit([{ ...LOAD, approachS: 90 }], CONDITIONS).touchdownByS).toBe(limit.touchdownByS);
  });
});

describe("simulated pilots (seed 99): later flights flown to the touchdown", () => {
  it.each(LOGGED_FLIGHTS)("after %i logged flights keep the reserve in 19 of 20 or more", (logged) => {
    const scores = SPREADS.map((spread) => scorePilots(spread, logged, 60, 99));
    const kept = scores.reduce((sum, score) => sum + score.kept, 0) / scores.length;
    expect(kept).toBeGreaterThanOrEqual(0.95);
  });
});
