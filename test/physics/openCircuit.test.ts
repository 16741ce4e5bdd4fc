import { describe, expect, it } from "vitest";
import {
  type Chemistry,
  chemistryRemark,
  openCircuitCellV,
  stateOfChargeBandPct,
} from "../../src/physics/index.ts";
import { chemistryFromPractice } from "../../src/physics/sentences.ts";

const CHEMISTRIES: readonly Chemistry[] = ["lipo", "lihv", "liion", "life"];

describe.each(CHEMISTRIES)("rest voltage of %s", (chemistry) => {
  it("rises with charge, low below value below high", () => {
    let before = openCircuitCellV(0, chemistry);
    for (let chargePct = 1; chargePct <= 100; chargePct++) {
      const band = openCircuitCellV(chargePct, chemistry);
      expect(band.value, `at ${chargePct} %`).toBeGreaterThan(before.value);
      expect(band.low).toBeGreaterThanOrEqual(before.low);
      expect(band.high).toBeGreaterThanOrEqual(before.high);
      expect(band.low).toBeLessThanOrEqual(band.value);
      expect(band.high).toBeGreaterThanOrEqual(band.value);
      before = band;
    }
  });

  it("comes back from volts to charge", () => {
    for (const chargePct of [3, 25, 50, 71, 98]) {
      const volts = openCircuitCellV(chargePct, chemistry);
      const back = stateOfChargeBandPct(volts.value, chemistry);
      expect(back.value).toBeCloseTo(chargePct, 6);
      expect(back.low).toBeLessThanOrEqual(chargePct + 1e-9);
      expect(back.high).toBeGreaterThanOrEqual(chargePct - 1e-9);
    }
  });

  it("stops at the ends and refuses NaN", () => {
    expect(openCircuitCellV(130, chemistry)).toEqual(openCircuitCellV(100, chemistry));
    expect(stateOfChargeBandPct(1, chemistry)).toEqual({ low: 0, value: 0, high: 0 });
    expect(stateOfChargeBandPct(5, chemistry)).toEqual({ low: 100, value: 100, high: 100 });
    expect(() => openCircuitCellV(Number.NaN, chemistry)).toThrow("NaN");
    expect(() => stateOfChargeBandPct(Number.NaN, chemistry)).toThrow("NaN");
  });
});

describe("the band", () => {
  it("is full at 4.2 V for lipo and 4.35 V for lihv, and says when it rests on common practice", () => {
    expect(openCircuitCellV(100, "lipo").value).toBeCloseTo(4.2, 12);
    expect(openCircuitCellV(100, "lihv").value).toBeCloseTo(4.35, 12);
    expect(chemistryRemark("lipo")).toBeNull();
    for (const chemistry of ["lihv", "liion", "life"] as const) {
      expect(chemistryRemark(chemistry)).toBe(chemistryFromPractice(chemistry));
    }
  });

  it("is wider for lihv and liion than for lipo", () => {
    const width = (chemistry: Chemistry) => {
      const band = openCircuitCellV(50, chemistry);
      return band.high - band.low;
    };
    expect(width("liion")).toBeGreaterThan(width("lipo"));
    expect(width("lihv")).toBeGreaterThan(width("lipo"));
  });
});
