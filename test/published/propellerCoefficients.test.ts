import { describe, expect, it } from "vitest";
import {
  advanceRatio,
  powerCoefficient,
  propellerPowerW,
  propellerThrustN,
  propellerTorqueNm,
  propulsiveEfficiency,
  staticFigureOfMerit,
  thrustCoefficient,
} from "../../src/physics/index.ts";
import { expectDigits } from "./digits.ts";

// UIUC Propeller Data Site, volumes 1 to 4, archive of 27 June 2022: rev/min, CT and CP of single static rows;
// thrust N, power W, torque N m at 1.225 kg/m3 and the figure of merit recomputed from them.
// diameter in, rev/min, CT, CP, T, P, Q, figure of merit
const STATIC_ROWS = [
  [19, 3007, 0.0972, 0.0399, 16.222, 161.06, 0.5115, 0.606],
  [19, 2070, 0.094, 0.0398, 7.434, 52.41, 0.2418, 0.578],
  [20, 4473.3, 0.104, 0.0322, 47.17, 553.67, 1.1819, 0.83],
  [21, 3940, 0.1113, 0.0364, 47.586, 545.13, 1.3212, 0.814],
  [18, 5453.3, 0.1164, 0.0401, 51.473, 737.21, 1.2909, 0.79],
  [16, 6453.3, 0.1172, 0.0414, 45.321, 699.12, 1.0345, 0.774],
  [14, 5966.7, 0.114, 0.0423, 22.077, 289.66, 0.4636, 0.726],
  [10, 6528, 0.1299, 0.0531, 7.8404, 88.5698, 0.129562, 0.7035],
  [10, 4029, 0.1158, 0.0466, 2.6624, 18.2738, 0.043311, 0.6747],
  [11, 6021, 0.1259, 0.0493, 9.4646, 103.9123, 0.164805, 0.723],
  [9, 5943.333, 0.14045, 0.080081, 4.6102, 59.5228, 0.095637, 0.5244],
] as const;

const HALF_LAST_DIGIT = 0.00005;

describe("UIUC static rows", () => {
  it.each(STATIC_ROWS)("%f in at %f rev/min", (inches, rpm, ct, cp, thrust, power, torque, merit) => {
    const diameterM = inches * 0.0254;
    const n = rpm / 60;
    const powerW = propellerPowerW(cp, 1.225, n, diameterM);
    const thrustN = propellerThrustN(ct, 1.225, n, diameterM);
    // The printed coefficients have four decimals; thrust and power rest on the unrounded ones.
    expect(Math.abs(thrustN / thrust - 1)).toBeLessThan(HALF_LAST_DIGIT / ct + 1e-4);
    expect(Math.abs(powerW / power - 1)).toBeLessThan(HALF_LAST_DIGIT / cp + 1e-4);
    expect(Math.abs(propellerTorqueNm(powerW, n) / torque - 1)).toBeLessThan(HALF_LAST_DIGIT / cp + 2e-4);
    const meritDoubt = merit * HALF_LAST_DIGIT * (1.5 / ct + 1 / cp) + 0.0005;
    expect(Math.abs(staticFigureOfMerit(ct, cp) - merit)).toBeLessThan(meritDoubt);
    expectDigits(powerCoefficient(powerW, 1.225, n, diameterM), cp, 13);
    expectDigits(thrustCoefficient(thrustN, 1.225, n, diameterM), ct, 13);
  });
});

describe("UIUC 19x12 thin electric in flight, 2502 rev/min (J, CT, CP, eta)", () => {
  it.each([
    [0.185, 0.0893, 0.0412, 0.402],
    [0.306, 0.0797, 0.042, 0.58],
    [0.399, 0.0691, 0.0411, 0.671],
    [0.481, 0.055, 0.0373, 0.709],
    [0.576, 0.0322, 0.0267, 0.694],
    [0.6, 0.0278, 0.0245, 0.682],
  ])("J %f", (j, ct, cp, eta) => {
    expect(Math.abs(propulsiveEfficiency(j, ct, cp) - eta)).toBeLessThan(0.003);
  });
});

describe("a four-blade wind-tunnel model", () => {
  // Sinnige 2018, as quoted in public code: D .237 m, 40 m/s, J .7963, CT .0953, CP .1025; the rest recomputed.
  it("turns at 211.951 rev/s with 16.546 N and 893.94 W", () => {
    const n = 40 / (0.7963 * 0.237);
    expect(n).toBeCloseTo(211.951, 3);
    expect(advanceRatio(40, n, 0.237)).toBeCloseTo(0.7963, 12);
    expect(propellerThrustN(0.0953, 1.225, n, 0.237)).toBeCloseTo(16.546, 2);
    expect(propellerPowerW(0.1025, 1.225, n, 0.237)).toBeCloseTo(893.94, 1);
    expect(propulsiveEfficiency(0.7963, 0.0953, 0.1025)).toBeCloseTo(0.7404, 4);
  });
});

describe("the trap of units", () => {
  it("rev/min in place of rev/s makes the power coefficient smaller by 216000", () => {
    const right = powerCoefficient(500, 1.225, 100, 0.4572);
    expectDigits(powerCoefficient(500, 1.225, 6000, 0.4572) / right, 4.62963e-6, 6);
    expectDigits(powerCoefficient(500, 1.225, 200 * Math.PI, 0.4572) / right, 0.00403144, 6);
  });
});
