import { describe, expect, it } from "vitest";
import { openCircuitCellV } from "../../../src/physics/index.ts";
import { chargeLimit, temperatureLimitS, voltageLimitS } from "../../../src/season/timer/index.ts";

const LOAD = {
  flight: "one",
  climbS: 20,
  climbChargeMah: 300,
  rateMahPerS: 6,
  groundChargeMah: 100,
  approachS: 40,
  peakCurrentA: 60,
};
const CHARGE = chargeLimit([LOAD, LOAD, LOAD], {
  capacityMah: 5000,
  health: 1,
  startShare: 1,
  reserveShare: 0.25,
  gainStandardDeviation: 0,
});
const VOLTAGE = {
  cells: 8,
  chemistry: "lipo",
  minLoadedCellV: 3.3,
  resistance10sOhm: 0.05,
  resistanceHalfWidthOhm: 0,
  peakCurrentA: 60,
  capacityMah: 5000,
  startShare: 1,
} as const;

describe("the touchdown that the loaded cells allow", () => {
  it("is where open-circuit volts less R(10 s) I, less what is open, reach the limit", () => {
    const touchdownS = voltageLimitS(CHARGE, VOLTAGE) ?? Number.NaN;
    const openAt = (rate: number) => {
      const drawn = CHARGE.groundMah + CHARGE.goAroundMah + 300 + rate * (touchdownS - 20);
      return openCircuitCellV(100 * (1 - drawn / 5000), "lipo");
    };
    const typical = openAt(CHARGE.meanRateMahPerS);
    const hurried = openAt(CHARGE.boundRateMahPerS);
    const open = Math.hypot(typical.value - hurried.value, typical.value - typical.low);
    expect(typical.value - (0.05 * 60) / 8 - open).toBeCloseTo(3.3, 3);
  });

  it("comes earlier with a larger or a less certain resistance and a larger current", () => {
    const baseS = voltageLimitS(CHARGE, VOLTAGE) ?? Number.NaN;
    for (const change of [
      { resistance10sOhm: 0.055 },
      { resistanceHalfWidthOhm: 0.01 },
      { peakCurrentA: 70 },
      { startShare: 0.9 },
    ]) {
      expect(voltageLimitS(CHARGE, { ...VOLTAGE, ...change })).toBeLessThan(baseS);
    }
  });

  it("is null when the limit is never reached and 0 when it is passed at once", () => {
    expect(voltageLimitS(CHARGE, { ...VOLTAGE, minLoadedCellV: 2, resistance10sOhm: 0.001 })).toBeNull();
    expect(voltageLimitS(CHARGE, { ...VOLTAGE, resistance10sOhm: 0.2 })).toBe(0);
  });
});

describe("the touchdown that the controller allows on the hot day", () => {
  const HEAT = {
    ambientC: 35,
    limitC: 100,
    steadyRiseC: 84,
    timeConstantS: 120,
    rippleC: 5,
  };
  it("follows the first-order rise", () => {
    const touchdownS = temperatureLimitS(HEAT) ?? Number.NaN;
    expect(35 + 5 + 84 * (1 - Math.exp(-touchdownS / 120))).toBeCloseTo(100, 9);
  });
  it("is null when the steady temperature stays below the limit", () => {
    expect(temperatureLimitS({ ...HEAT, steadyRiseC: 59.9 })).toBeNull();
  });
  it("is 0 when the ambient alone takes all the room", () => {
    expect(temperatureLimitS({ ...HEAT, ambientC: 96 })).toBe(0);
  });
});
