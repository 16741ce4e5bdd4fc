import { describe, expect, it } from "vitest";
import { convolveWithDecay, heatedTemperatures, throughLag, timeToReachS } from "../../src/physics/index.ts";

describe("convolveWithDecay", () => {
  it("is exact for a constant and for a ramp", () => {
    const tau = 37;
    const constant = convolveWithDecay(new Float64Array(100).fill(3), 0.5, tau);
    const ramp = convolveWithDecay(Float64Array.from({ length: 100 }, (_, k) => k * 0.5), 0.5, tau); // biome-ignore format: one case
    for (const k of [0, 1, 10, 99]) {
      const t = k * 0.5;
      expect(constant[k]).toBeCloseTo(3 * tau * (1 - Math.exp(-t / tau)), 10);
      expect(ramp[k]).toBeCloseTo(tau * (t - tau * (1 - Math.exp(-t / tau))), 8);
    }
  });
});

describe("throughLag", () => {
  it("starts at rest, follows a ramp one lag behind, and is the signal for no lag", () => {
    const ramp = Float64Array.from({ length: 200 }, (_, k) => 20 + k);
    const shown = throughLag(ramp, 1, 5);
    expect(shown[0]).toBe(20);
    expect(shown[199]).toBeCloseTo(20 + 199 - 5, 9);
    expect(Array.from(throughLag(ramp, 1, 0))).toEqual(Array.from(ramp));
  });
});

describe("heatedTemperatures", () => {
  it("is what small steps of the equation give for a driver that comes and goes", () => {
    const driver = Float64Array.from({ length: 300 }, (_, k) => (k % 60 < 20 ? 1600 : 300 + k));
    const constants = { timeConstantS: 90, steadyRise: 0.024, ambientC: 18, startC: 25 };
    const curve = heatedTemperatures(driver, 1, constants);
    let body = 25;
    const steps = 2000;
    for (let k = 1; k < driver.length; k++) {
      for (let j = 0; j < steps; j++) {
        const now = driver[k - 1]! + ((j + 0.5) / steps) * (driver[k]! - driver[k - 1]!);
        body += (0.024 * now - (body - 18)) / 90 / steps;
      }
      expect(Math.abs(curve[k]! - body)).toBeLessThan(0.001);
    }
  });

  it("has no time for a temperature that is not on the way", () => {
    expect(timeToReachS(20, 60, 70, 100)).toBeNaN();
    expect(timeToReachS(20, 60, 10, 100)).toBeNaN();
    expect(timeToReachS(20, 60, 20, 100)).toBeCloseTo(0, 12);
  });
});
