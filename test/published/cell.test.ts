import { describe, expect, it } from "vitest";
import {
  openCircuitCellV,
  resistanceRatio,
  stateOfChargeBandPct,
  twoLoadResistanceOhm,
} from "../../src/physics/index.ts";

describe("IEC 61960-3:2017, resistance by two loads", () => {
  it("own example after its procedure: 5 Ah, 2.5 mohm, 4.2 V at rest", () => {
    expect(twoLoadResistanceOhm(4.1975, 1, 4.1875, 5)).toBeCloseTo(2.5e-3, 12);
    expect(twoLoadResistanceOhm(4.1875, 5, 4.1975, 1)).toBeNull();
  });
});

describe("rest voltage of lithium polymer by source", () => {
  // Chen and Rincon-Mora 2006 (values of equation 2 recomputed), Ecker and others 2015 (pouch cell), a community table.
  it("spans 3.587 to 3.73 V at 20 % and 3.787 to 3.84 V at 50 %", () => {
    const at20 = openCircuitCellV(20, "lipo");
    const at50 = openCircuitCellV(50, "lipo");
    expect([at20.low, at20.high]).toEqual([3.587, 3.73]);
    expect([at50.low, at50.high]).toEqual([3.7873, 3.84]);
    expect(at50.value).toBeCloseTo((3.84 + 3.7887 + 3.80336) / 3, 4);
  });

  it("leaves 40 to 56 % for 3.80 V", () => {
    const band = stateOfChargeBandPct(3.8, "lipo");
    expect(band.low).toBeCloseTo(40, 6);
    expect(band.high).toBeCloseTo(55.6, 1);
    expect(band.value).toBeGreaterThan(44);
    expect(band.value).toBeLessThan(50);
  });
});

describe("resistance of a cold pack", () => {
  it("is 53 to 73 % higher at 10 degC than at 25 by two published cells", () => {
    // Arrhenius with 20 kJ/mol: 1.533; Lai 2019 as fitted: 1.507 / .869.
    const ratio = resistanceRatio(10);
    expect(ratio.low).toBeCloseTo(1.533, 3);
    expect(ratio.high).toBeCloseTo(1.507 / 0.869, 6);
    // Further points of the Arrhenius curve as printed: 0 degC 2.093, 40 degC .680 (.6795 recomputed).
    expect(resistanceRatio(0).low).toBeCloseTo(2.093, 3);
    expect(resistanceRatio(40).low).toBeCloseTo(0.68, 2);
  });
});
