import { describe, expect, it } from "vitest";
import { chosenCoefficient } from "../../../src/flight/prediction/chosenCoefficient.ts";
import { type KnownParts, NOTHING_KNOWN } from "../../../src/flight/prediction/index.ts";
import {
  PROPELLER_KINDS,
  type PropellerShape,
  predictBesideMeasured,
  predictStaticPowerCoefficient,
} from "../../../src/physics/index.ts";
import { STATIC_MEANS } from "../../../src/physics/staticMeans.ts";

const LOG_HALF_WIDTH = 0.05;

function knowing(shape: PropellerShape, powerCoefficient: number): KnownParts {
  const half = LOG_HALF_WIDTH * powerCoefficient;
  const value = {
    value: powerCoefficient,
    low: powerCoefficient - half,
    high: powerCoefficient + half,
    flights: 2,
    basis: "measured in 2 flights",
  };
  const nothing = {
    staticCurrentA: null,

    cruiseShare: null,

    controllerRiseC: null,
  };
  return { ...NOTHING_KNOWN, flown: [{ shape, flights: 2, powerCoefficient: value, ...nothing }] };
}

describe("the coefficient to plan with", () => {
  const asked: PropellerShape = { diameterIn: 18, pitchIn: 10, blades: 2, family: "thin electric" };
  const flown: PropellerShape = { ...asked, pitchIn: 8 };

  it("is the measured one for the propeller that was flown", () => {
    expect(chosenCoefficient(asked, knowing(asked, 0.041))).toMatchObject({
      value: 0.041,
      isMeasured: true,
      basis: "measured in 2 flights",
    });
  });

  it("is the published line without logs", () => {
    const line = predictStaticPowerCoefficient(asked);
    expect(chosenCoefficient(asked, NOTHING_KNOWN)).toMatchObject({
      value: line.value,
      low: line.low,
      high: line.high,
    });
  });

  it("is combined with a measured neighbour, not replaced, while that one lies within its kind's interval", () => {
    const usual = predictStaticPowerCoefficient(flown).value * 1.1;
    const { value, low, high } = predictBesideMeasured(asked, {
      shape: flown,
      powerCoefficient: usual,
      relativeSd: Math.log((1 + LOG_HALF_WIDTH) / (1 - LOG_HALF_WIDTH)) / 2 / 1.96,
    });
    const chosen = chosenCoefficient(asked, knowing(flown, usual));
    expect(chosen.value).toBeCloseTo(value, 12);
    expect(chosen.low).toBeCloseTo(low, 12);
    expect(chosen.high).toBeCloseTo(high, 12);
  });

  it("follows a neighbour far outside its kind most of the way, and is wider for it", () => {
    const line = predictStaticPowerCoefficient(asked);
    const shift = 1.5;
    const chosen = chosenCoefficient(
      asked,
      knowing(flown, shift * predictStaticPowerCoefficient(flown).value),
    );
    expect(chosen.value).toBeGreaterThan(1.35 * line.value);
    expect(chosen.value).toBeLessThan(shift * line.value);
    expect(chosen.high / chosen.low).toBeGreaterThan(line.high / line.low);
  });

  it("covers published propellers from a published neighbour of their kind", () => {
    const pairs = PROPELLER_KINDS.flatMap((family) => {
      const all = STATIC_MEANS[family].map(([diameterIn, pitchIn, , power]) => ({
        shape: { diameterIn, pitchIn, blades: 2, family },
        power,
      }));
      return all.flatMap((measured) =>
        all.filter((one) => one !== measured).map((one) => ({ measured, one })),
      );
    });
    const inside = pairs.filter(({ measured, one }) => {
      const { low, high } = chosenCoefficient(one.shape, knowing(measured.shape, measured.power));
      return low <= one.power && one.power <= high;
    });
    console.log(
      `${pairs.length} pairs of UIUC propellers: ${((100 * inside.length) / pairs.length).toFixed(1)} % inside`,
    );
    expect(inside.length / pairs.length).toBeGreaterThan(0.92);
  });
});
