import { describe, expect, it } from "vitest";
import { chargeLimit, type LoggedLoad } from "../../../src/season/timer/index.ts";
import { CONDITIONS } from "./entries.ts";
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

describe("the cautious touchdown", () => {
  const rates = (spread: number, count: number) =>
    Array.from({ length: count }, (_, at) => ({
      ...LOAD,
      rateMahPerS: 6 * Math.exp(at % 2 === 0 ? spread : -spread),
    }));
  const boundOver = (loads: readonly LoggedLoad[]): number => {
    const limit = chargeLimit(loads, CONDITIONS);
    return Math.log((limit.usableMah - limit.climbMah) / (limit.cautiousTouchdownByS - limit.climbS) / 6);
  };

  it("rests on a spread of 20 % worth three flights where the flights' own asks for no more", () => {
    // k(.95/.95) is 2.910963 for n = 10 and 2.396002 for n = 20 (table of test/published/toleranceFactors.test.ts).
    const spread = Math.sqrt((3 * 0.2 ** 2) / 12);
    const factor = boundOver(rates(0, 10)) / spread;
    expect(factor).toBeGreaterThan(2.396002);
    expect(factor).toBeLessThan(2.910963);
  });

  it("rests on the flights' own spread where that is large, from six flights on", () => {
    const spread = 0.4 * Math.sqrt(10 / 9);
    // k(.95/.95) = 2.910963 for n = 10 (the same table); for a confidence of .96 a little more.
    expect(boundOver(rates(0.4, 10)) / spread).toBeGreaterThan(2.911);
    expect(boundOver(rates(0.4, 10)) / spread).toBeLessThan(3.1);
    // For n = 4 the flights' own would ask for k = 5.143875 (the same table).
    expect(boundOver(rates(0.4, 4))).toBeLessThan(5.143875 * 0.4 * Math.sqrt(4 / 3));
  });

  it("keeps its promise for 95 % of pilots of every spread (seed 77)", () => {
    for (const [logged, spread] of [
      [3, 0.25],
      [6, 0.25],
      [12, 0.2],
    ] as const) {
      expect(scorePilots(spread, logged, 200, 77).cautiousKept).toBeGreaterThanOrEqual(0.95);
    }
  });
});
