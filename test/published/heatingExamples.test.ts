import { describe, expect, it } from "vitest";
import { firstOrderC, heatedTemperatures, lumpTimeConstantS, timeToReachS } from "../../src/physics/index.ts";

describe("Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, example 5.1 (thermocouple junction)", () => {
  it("a sphere of 7.06e-4 m has a time constant of 1 s and reaches 199 degC after 5.2 s", () => {
    const diameterM = (6 * 400 * 1) / (8500 * 400);
    expect(diameterM).toBeCloseTo(7.06e-4, 6);
    const tau = lumpTimeConstantS(8500, diameterM / 6, 400, 400);
    expect(tau).toBeCloseTo(1, 12);
    expect(timeToReachS(25, 200, 199, tau)).toBeCloseTo(5.2, 1);
    expect(timeToReachS(25, 200, 199, tau)).toBeCloseTo(5.16479, 5);
    expect(firstOrderC(25, 200, 5.16479, tau)).toBeCloseTo(199, 4);
  });
});

describe("Cengel, Heat Transfer, example 4-1 (thermocouple)", () => {
  it("a sphere of 1 mm: b .46 per second, 99 per cent after 10 s", () => {
    const tau = lumpTimeConstantS(8500, 1e-3 / 6, 320, 210);
    expect(1 / tau).toBeCloseTo(0.46324, 5);
    expect(tau).toBeCloseTo(2.1587, 4);
    expect(timeToReachS(0, 1, 0.99, tau)).toBeCloseTo(9.9413, 4);
  });
});

describe("own heating example: 25 degC, 12 W, 3 K/W, 180 s", () => {
  it("passes the recomputed temperatures", () => {
    const curve = heatedTemperatures(new Float64Array(601).fill(12), 1, {
      timeConstantS: 180,
      steadyRise: 3,
      ambientC: 25,
      startC: 25,
    });
    const expected: [number, number][] = [
      [0, 25],
      [60, 35.204873],
      [120, 42.516984],
      [300, 54.200478],
      [600, 59.715736],
    ];
    for (const [second, celsius] of expected) expect(curve[second]).toBeCloseTo(celsius, 6);
  });
});
