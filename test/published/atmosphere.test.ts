import { describe, expect, it } from "vitest";
import {
  airDensity,
  airDensityAt,
  geopotentialHeightM,
  standardPressurePa,
  standardTemperatureK,
} from "../../src/physics/index.ts";
import { expectDigits } from "./digits.ts";

// ISO 2533:1975, Standard Atmosphere, table 5 (as machine-readable fixtures of a public implementation):
// height m; at that geopotential height T K, p hPa, rho; at that geometric height T K, p hPa, rho.
const TABLE = [
  [0, 288.15, 1013.25, 1.225, 288.15, 1013.25, 1.225],
  [500, 284.9, 954.608, 1.16727, 284.9, 954.613, 1.16727],
  [1000, 281.65, 898.746, 1.11164, 281.651, 898.763, 1.11166],
  [1500, 278.4, 845.56, 1.05807, 278.402, 845.597, 1.0581],
  [2000, 275.15, 794.952, 1.00649, 275.154, 795.014, 1.00655],
  [3000, 268.65, 701.085, 0.909122, 268.659, 701.211, 0.909254],
] as const;

describe("ISO 2533 standard atmosphere", () => {
  it.each(TABLE)("at %i m", (height, ...row) => {
    const check = (geopotential: number, kelvin: number, hectopascal: number, density: number) => {
      const temperature = standardTemperatureK(geopotential);
      expect(Math.abs(temperature - kelvin)).toBeLessThanOrEqual(0.00051);
      expect(Math.abs(standardPressurePa(geopotential) / 100 - hectopascal)).toBeLessThanOrEqual(0.00051);
      const own = airDensity(standardPressurePa(geopotential), temperature - 273.15);
      expect(Math.abs(own / density - 1)).toBeLessThan(5e-6);
    };
    check(height, row[0], row[1], row[2]);
    check(geopotentialHeightM(height), row[3], row[4], row[5]);
  });

  it("uses the geometric elevation of the field and the day's temperature", () => {
    const standardDay = standardTemperatureK(geopotentialHeightM(1000)) - 273.15;
    expectDigits(airDensityAt(1000, standardDay), 1.11166, 5);
    expectDigits(airDensityAt(0, 35), 1.145493, 6);
    expectDigits(airDensityAt(0, -10), 1.341379, 6);
  });

  it("off the standard day, p / (R T) recomputed", () => {
    expectDigits(airDensity(89874.6, 30), 1.032803, 6);
    expectDigits(airDensity(95460.8, 35), 1.079198, 6);
  });

  it("refuses a height outside the layer, showing it", () => {
    expect(() => airDensityAt(20_000, 15)).toThrow("1993");
    expect(() => standardTemperatureK(Number.NaN)).toThrow("NaN");
  });
});
