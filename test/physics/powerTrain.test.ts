import { describe, expect, it } from "vitest";
import {
  fullThrottleEquilibrium,
  kvFromFullThrottle,
  motorCurrentA,
  motorState,
  noLoadCurrentA,
  propellerPowerW,
} from "../../src/physics/index.ts";

const MOTOR = { kvRpmPerV: 230, pathOhm: 0.0225, noLoadA: 1.4 };
const TRAIN = {
  openCircuitV: 33.2,
  packOhm: 0.045,
  motor: MOTOR,
  motorCount: 1,
  powerCoefficient: 0.0345,
  diameterM: 18 * 0.0254,
  density: 1.2,
};

describe("motorState", () => {
  it("satisfies Im^2 R + Im w/kv = V I with the positive root", () => {
    for (const [v, i, n] of [
      [30, 50, 100],
      [30, 0.2, 20],
      [22, 120, 60],
    ] as const) {
      const im = motorCurrentA(v, i, n, 230, 0.0225);
      expect(im).toBeGreaterThan(0);
      expect(im * im * 0.0225 + (im * n * 60) / 230).toBeCloseTo(v * i, 9);
    }
  });

  it("keeps its digits as the resistance goes to nothing", () => {
    expect(motorCurrentA(30, 50, 100, 230, 1e-14)).toBeCloseTo((30 * 50) / (6000 / 230), 9);
  });

  it("gives no efficiency below a duty of 0.3, without power, and passes NaN on", () => {
    expect(motorState(30, 3, 10, MOTOR).duty).toBeLessThan(0.3);
    expect(motorState(30, 3, 10, MOTOR).efficiency).toBeNull();
    expect(motorState(30, 0, 10, MOTOR).efficiency).toBeNull();
    expect(motorState(Number.NaN, 5, 10, MOTOR).shaftPowerW).toBeNaN();
    expect(motorState(Number.NaN, 5, 10, MOTOR).efficiency).toBeNull();
  });

  it("scales the no-load current as the root of the volts over 10 V", () => {
    expect(noLoadCurrentA(1.4, 10)).toBe(1.4);
    expect(noLoadCurrentA(1.4, 40)).toBeCloseTo(2.8, 12);
  });
});

describe("fullThrottleEquilibrium", () => {
  const point = fullThrottleEquilibrium(TRAIN)!;

  it("satisfies both equations", () => {
    const back = (point.speedRevPerS * 60) / 230;
    expect(back).toBeCloseTo(point.packV - point.packA * 0.0225, 8);
    expect(point.packV).toBeCloseTo(33.2 - point.packA * 0.045, 8);
    const shaft = (point.packA - noLoadCurrentA(1.4, point.packV)) * back;
    expect(shaft).toBeCloseTo(propellerPowerW(0.0345, 1.2, point.speedRevPerS, TRAIN.diameterM), 5);
    expect(point.packPowerW).toBeCloseTo(point.packV * point.packA, 9);
  });

  it("is what the log model finds again at a duty of 1", () => {
    const state = motorState(point.packV, point.packA, point.speedRevPerS, MOTOR);
    expect(state.duty).toBeCloseTo(1, 9);
    expect(state.shaftPowerW).toBeCloseTo(point.shaftPowerW, 5);
    expect(state.efficiency).toBeCloseTo(point.efficiency, 9);
    expect(kvFromFullThrottle(point.packV, point.packA, point.speedRevPerS, 0.0225)).toBeCloseTo(230, 7);
  });

  it("moves the right way: more pitch, thinner air, a weaker pack", () => {
    const amps = (change: object) => fullThrottleEquilibrium({ ...TRAIN, ...change })!.packA;
    expect(amps({ powerCoefficient: 0.04 })).toBeGreaterThan(point.packA);
    expect(amps({ density: 1.0 })).toBeLessThan(point.packA);
    expect(amps({ packOhm: 0.09 })).toBeLessThan(point.packA);
    expect(amps({ openCircuitV: 37.3 })).toBeGreaterThan(point.packA);
  });

  it("draws twice as much for two motors on a stiff pack, less on a soft one", () => {
    const stiff = { ...TRAIN, packOhm: 0 };
    const one = fullThrottleEquilibrium(stiff)!.packA;
    expect(fullThrottleEquilibrium({ ...stiff, motorCount: 2 })!.packA).toBeCloseTo(2 * one, 6);
    expect(fullThrottleEquilibrium({ ...TRAIN, motorCount: 2 })!.packA).toBeLessThan(2 * point.packA);
  });

  it("is null when a constant is missing or the supply cannot turn the motor", () => {
    expect(fullThrottleEquilibrium({ ...TRAIN, openCircuitV: Number.NaN })).toBeNull();
    expect(fullThrottleEquilibrium({ ...TRAIN, powerCoefficient: 0 })).toBeNull();
    expect(fullThrottleEquilibrium({ ...TRAIN, packOhm: -1 })).toBeNull();
    expect(fullThrottleEquilibrium({ ...TRAIN, motor: { ...MOTOR, noLoadA: 1e4 } })).toBeNull();
  });

  it("gives no kv when no volts are left", () => {
    expect(kvFromFullThrottle(1, 100, 50, 0.02)).toBeNaN();
  });
});
