import { describe, expect, it } from "vitest";
import {
  PROPELLER_KINDS,
  predictBesideMeasured,
  predictStaticPowerCoefficient,
  predictStaticThrustCoefficient,
} from "../../src/physics/index.ts";
import { familyNotKnown, outsideMeasured, scaledForBlades } from "../../src/physics/sentences.ts";

const SHAPE = { diameterIn: 18, pitchIn: 10, blades: 2, family: "thin electric" };
const width = (one: { low: number; high: number }) => Math.log(one.high / one.low);

describe("predictStaticPowerCoefficient", () => {
  it("covers the measured 18x10 thin electric propeller (UIUC: .0345) without remark", () => {
    const predicted = predictStaticPowerCoefficient(SHAPE);
    expect(predicted.low).toBeLessThan(0.0345);
    expect(predicted.high).toBeGreaterThan(0.0345);
    expect(predicted.remarks).toEqual([]);
    expect(predicted.isExtrapolated).toBe(false);
    expect(predicted.relativeSd).toBeGreaterThan(0.05);
    expect(predicted.relativeSd).toBeLessThan(0.13);
  });

  it("widens outside the pitches and diameters measured, and says so", () => {
    const inside = predictStaticPowerCoefficient(SHAPE);
    const steep = predictStaticPowerCoefficient({ ...SHAPE, pitchIn: 22 });
    expect(width(steep)).toBeGreaterThan(1.3 * width(inside));
    expect(steep.isExtrapolated).toBe(true);
    expect(steep.remarks).toEqual([
      outsideMeasured("pitch over diameter", 22 / 18, 8 / 18, 1, "thin electric"),
    ]);
    const large = predictStaticPowerCoefficient({ ...SHAPE, diameterIn: 30, pitchIn: 16 });
    expect(width(large)).toBeGreaterThan(width(inside));
    expect(large.remarks).toEqual([outsideMeasured("diameter in inches", 30, 8, 21, "thin electric")]);
    const largeSport = predictStaticPowerCoefficient({ ...SHAPE, diameterIn: 20, family: "sport" });
    expect(largeSport.remarks).toEqual([outsideMeasured("diameter in inches", 20, 4.2, 14, "sport")]);
  });

  it("takes all kinds together for an unknown family, wider than any kind", () => {
    for (const family of [null, "carved walnut"]) {
      const predicted = predictStaticPowerCoefficient({ ...SHAPE, family });
      expect(predicted.group).toBe("all kinds");
      expect(predicted.remarks).toEqual([familyNotKnown(family, PROPELLER_KINDS)]);
      for (const kind of PROPELLER_KINDS) {
        const ofKind = predictStaticPowerCoefficient({ ...SHAPE, diameterIn: 11, pitchIn: 6, family: kind });
        expect(width(predicted)).toBeGreaterThan(width(ofKind));
      }
    }
    expect(predictStaticPowerCoefficient({ ...SHAPE, family: " Thin Electric " }).group).toBe(
      "thin electric",
    );
  });

  it("scales to three blades: more power, a wider interval, a remark", () => {
    const two = predictStaticPowerCoefficient(SHAPE);
    const three = predictStaticPowerCoefficient({ ...SHAPE, blades: 3 });
    expect(three.value / two.value).toBeCloseTo(1.5 ** 0.75, 12);
    expect(width(three)).toBeGreaterThan(width(two));
    expect(three.remarks).toEqual([scaledForBlades(3)]);
  });

  it("refuses lengths that are not positive", () => {
    expect(() => predictStaticPowerCoefficient({ ...SHAPE, diameterIn: 0 })).toThrow("got 0");
    expect(() => predictStaticPowerCoefficient({ ...SHAPE, pitchIn: Number.NaN })).toThrow("NaN");
    expect(() => predictStaticPowerCoefficient({ ...SHAPE, blades: Number.POSITIVE_INFINITY })).toThrow(
      "Inf",
    );
  });

  it("gives a thrust coefficient that covers the measured one (UIUC: .1071)", () => {
    const predicted = predictStaticThrustCoefficient(SHAPE);
    expect(predicted.low).toBeLessThan(0.1071);
    expect(predicted.high).toBeGreaterThan(0.1071);
  });
});

describe("one inch up in diameter, one down in pitch (common practice, no published source)", () => {
  it("keeps CP D^5, the load at one speed, within 11 % from 18x10 to 19x9 by kind", () => {
    const load = (diameterIn: number, pitchIn: number, family: string) =>
      predictStaticPowerCoefficient({ diameterIn, pitchIn, blades: 2, family }).value * diameterIn ** 5;
    for (const family of ["thin electric", "sport", "folding"]) {
      const ratio = load(19, 9, family) / load(18, 10, family);
      expect(Math.abs(ratio - 1), `${family}: ${ratio}`).toBeLessThan(0.11);
    }
  });
});

describe("predictBesideMeasured", () => {
  const measured = { shape: SHAPE, powerCoefficient: 0.042, relativeSd: 0.02 };

  it("shifts a neighbour's line part of the way and narrows it a little", () => {
    const line = predictStaticPowerCoefficient({ ...SHAPE, pitchIn: 9 });
    const beside = predictBesideMeasured({ ...SHAPE, pitchIn: 9 }, measured);
    const shiftThere = Math.log(0.042 / predictStaticPowerCoefficient(SHAPE).value);
    const shiftHere = Math.log(beside.value / line.value);
    expect(shiftHere).toBeGreaterThan(0.1 * shiftThere);
    expect(shiftHere).toBeLessThan(0.35 * shiftThere);
    expect(beside.relativeSd).toBeLessThan(line.relativeSd);
    expect(beside.relativeSd).toBeGreaterThan(0.9 * line.relativeSd);
  });

  it("changes nothing far away, across families, blades or without a known family", () => {
    const far = { ...SHAPE, diameterIn: 10, pitchIn: 10 };
    const farLine = predictStaticPowerCoefficient(far);
    expect(predictBesideMeasured(far, measured).value / farLine.value).toBeCloseTo(1, 3);
    for (const other of [
      { ...SHAPE, family: "sport" },
      { ...SHAPE, blades: 3 },
      { ...SHAPE, family: null },
    ]) {
      expect(predictBesideMeasured(other, measured)).toEqual(predictStaticPowerCoefficient(other));
    }
  });
});
