import { describe, expect, it } from "vitest";
import { RandomNumbers } from "../../src/base/statistics/index.ts";
import { convolveWithDecay, fitHeating, heatedTemperatures, throughLag } from "../../src/physics/index.ts";

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

/** An invented flight by its own equations: Euler steps of 1/20 s, averaged to 1 Hz. */
function inventedFlight(seed: number, truth: { tau: number; rise: number; lag: number; ambient: number }) {
  const random = new RandomNumbers(seed);
  const seconds = 420;
  const temperatureC = new Float64Array(seconds);
  const driver = new Float64Array(seconds);
  let [body, probe, current, target] = [truth.ambient + 4, truth.ambient + 4, 1, 1];
  for (let k = 0; k < seconds; k++) {
    if (random.next() < 0.08) target = random.next() < 0.2 ? 45 + 15 * random.next() : 8 + 25 * random.next();
    if (k < 15 || k > seconds - 20) target = 1;
    let [sumProbe, sumDriver] = [0, 0];
    for (let j = 0; j < 20; j++) {
      current += ((target - current) * 0.05) / 1.5;
      const square = current ** 2;
      body += 0.05 * ((truth.rise / truth.tau) * square - (body - truth.ambient) / truth.tau);
      probe += (0.05 * (body - probe)) / truth.lag;
      sumProbe += probe / 20;
      sumDriver += square / 20;
    }
    temperatureC[k] = Math.round(sumProbe * 2) / 2;
    driver[k] = sumDriver;
  }
  return {
    stepS: 1,
    temperatureC,
    driver,
    ambientC: truth.ambient + (random.next() - 0.5) * 4,
    ambientSd: 2,
  };
}

describe("fitHeating", () => {
  const truth = { tau: 90, rise: 0.024, lag: 3, ambient: 18 };

  it("covers time constant and rise of invented flights in at least 9 of 10, not absurdly wide", () => {
    let [covers, count] = [0, 0];
    for (let seed = 1; seed <= 10; seed++) {
      const own = { ...truth, tau: 50 + 12 * seed, lag: 1 + (seed % 4) };
      const fit = fitHeating(inventedFlight(seed, own))!;
      expect(fit.isIdentified, `seed ${seed}`).toBe(true);
      const [shortest, longest] = fit.timeConstantRangeS;
      const [least, most] = fit.steadyRiseRange;
      count += 2;
      covers +=
        Number(shortest <= own.tau && own.tau <= longest) + Number(least <= own.rise && own.rise <= most);
      expect((longest - shortest) / 2 / own.tau, `seed ${seed}`).toBeLessThan(0.3);
      expect(fit.timeConstantS).toBeGreaterThanOrEqual(shortest);
      expect(fit.timeConstantS).toBeLessThanOrEqual(longest);
    }
    expect(covers / count).toBeGreaterThanOrEqual(0.9);
  });

  it("would be far off without the probe's lag, and is the same with readings missing", () => {
    const flight = inventedFlight(7, { ...truth, lag: 5 });
    const fit = fitHeating(flight)!;
    expect(fit.lagS).toBeGreaterThanOrEqual(3);
    const holed = flight.temperatureC.map((value, k) => (k % 5 === 2 ? Number.NaN : value));
    const again = fitHeating({ ...flight, temperatureC: holed })!;
    expect(Math.abs(again.timeConstantS / fit.timeConstantS - 1)).toBeLessThan(0.05);
  });

  it("recovers its own model exactly", () => {
    const driver = inventedFlight(3, truth).driver;
    const constants = { timeConstantS: 120, steadyRise: 0.03, ambientC: 15, startC: 22 };
    const temperatureC = heatedTemperatures(driver, 1, constants);
    const fit = fitHeating({ stepS: 1, temperatureC, driver, ambientC: 15, ambientSd: 2 })!;
    expect(fit.timeConstantS).toBeCloseTo(120, 1);
    expect(fit.steadyRise).toBeCloseTo(0.03, 5);
    expect(fit.startC).toBeCloseTo(22, 2);
    expect(fit.lagS).toBe(0);
  });

  it("is not identified from a small rise, and null without readings or a driver", () => {
    const flight = inventedFlight(2, { ...truth, rise: 0.002 });
    expect(fitHeating(flight)?.isIdentified).toBe(false);
    const none = new Float64Array(420);
    expect(fitHeating({ ...flight, driver: none })).toBeNull();
    expect(fitHeating({ ...flight, temperatureC: none.fill(Number.NaN) })).toBeNull();
    expect(() => fitHeating({ ...flight, driver: new Float64Array(3) })).toThrow("420 and 3");
  });
});
