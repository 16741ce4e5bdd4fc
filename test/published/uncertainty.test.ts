import { describe, expect, it } from "vitest";
import {
  effectiveDegreesOfFreedom,
  inQuadrature,
  propagate,
  propagatedCovariance,
  studentTQuantile,
} from "../../src/base/statistics/index.ts";

// JCGM 100:2008, Evaluation of measurement data: Guide to the expression of uncertainty in measurement (GUM).

describe("GUM example H.1, end gauge", () => {
  // The combined standard uncertainties of the text: standard 25 nm, comparator 9.7 nm, expansion 2.9 nm, temperature 16.6 nm.
  const parts = [
    { uncertainty: 25, degreesOfFreedom: 18 },
    { uncertainty: 9.7, degreesOfFreedom: 25.6 },
    { uncertainty: 2.9, degreesOfFreedom: 50 },
    { uncertainty: 16.6, degreesOfFreedom: 2 },
  ];

  it("combines to 32 nm with 16 effective degrees of freedom and U99 of 93 nm", () => {
    const combined = inQuadrature(...parts.map((part) => part.uncertainty));
    expect(combined ** 2).toBeCloseTo(1002, -1);
    expect(combined).toBeCloseTo(31.7, 1);
    expect(Math.floor(effectiveDegreesOfFreedom(parts))).toBe(16);
    expect(effectiveDegreesOfFreedom(parts)).toBeCloseTo(16.7, 0);
    expect(studentTQuantile(0.995, 16)).toBeCloseTo(2.92, 2);
    expect(studentTQuantile(0.995, 16) * Math.round(combined)).toBeCloseTo(93, 0);
  });

  it("gives the same through the measurement equation", () => {
    // l = ls + d - ls (delta alpha theta + alpha delta theta), in nm; ls 50.000623 mm.
    const length = ([ls, d, alpha, theta, dAlpha, dTheta]: readonly number[]) =>
      ls! + d! - ls! * (dAlpha! * theta! + alpha! * dTheta!);
    const result = propagate(
      length,
      [50_000_623, 215, 11.5e-6, -0.1, 0, 0],
      [25, 9.7, 0, 0.41, 0.58e-6, 0.029],
    );
    expect(result.value).toBeCloseTo(50_000_838, 6);
    expect(result.uncertainty).toBeGreaterThan(31.6);
    expect(result.uncertainty).toBeLessThan(31.8);
  });
});

describe("GUM example H.2, resistance and reactance measured together", () => {
  const inputs = [4.999, 19.661e-3, 1.04446];
  const uncertainties = [3.2e-3, 9.5e-6, 7.5e-4];
  const correlation = [
    [1, -0.36, 0.86],
    [-0.36, 1, -0.65],
    [0.86, -0.65, 1],
  ];
  const through = (f: (v: number, i: number, phi: number) => number) =>
    propagate(([v, i, phi]) => f(v!, i!, phi!), inputs, uncertainties, correlation);
  const r = through((v, i, phi) => (v / i) * Math.cos(phi));
  const x = through((v, i, phi) => (v / i) * Math.sin(phi));
  const z = through((v, i) => v / i);

  it("gives 127.732(70), 219.85(30) and 254.26(24) ohm", () => {
    expect(r.value).toBeCloseTo(127.732, 3);
    expect(r.uncertainty).toBeCloseTo(0.07, 3);
    expect(x.value).toBeCloseTo(219.85, 2);
    expect(x.uncertainty).toBeCloseTo(0.3, 1);
    expect(x.uncertainty).toBeCloseTo(0.2957, 4);
    expect(z.value).toBeCloseTo(254.26, 2);
    expect(z.uncertainty).toBeCloseTo(0.2366, 4);
  });

  it("gives the correlations -.59, -.49 and .99 of the outputs", () => {
    const correlationOf = (a: typeof r, b: typeof r) =>
      propagatedCovariance(a.sensitivities, b.sensitivities, uncertainties, correlation) /
      (a.uncertainty * b.uncertainty);
    expect(correlationOf(r, x)).toBeCloseTo(-0.5915, 3);
    expect(correlationOf(r, z)).toBeCloseTo(-0.4906, 3);
    expect(correlationOf(x, z)).toBeCloseTo(0.9928, 4);
  });

  it("would be 14 % too small for Z without the correlations", () => {
    const blind = propagate(([v, i]) => v! / i!, inputs, uncertainties);
    expect(blind.uncertainty).toBeCloseTo(0.20392, 5);
  });
});

describe("power from volts and amps, our own example", () => {
  it("22.2 V of .05 and 80 A of 1 give 1776 W of 22.557", () => {
    const power = propagate(([v, i]) => v! * i!, [22.2, 80], [0.05, 1]);
    expect(power.value).toBeCloseTo(1776, 9);
    expect(power.uncertainty).toBeCloseTo(22.557, 3);
  });
});
