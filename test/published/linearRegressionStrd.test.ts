import { describe, expect, it } from "vitest";
import { leastSquares, linearRegression } from "../../src/base/statistics/index.ts";
import { expectDigits } from "./digits.ts";

// NIST Statistical Reference Datasets, linear regression (1999): data and certified values.

/** Norris, J. (calibration of ozone monitors), n = 36: pairs y, x. */
const NORRIS = [
  0.1, 0.2, 338.8, 337.4, 118.1, 118.2, 888.0, 884.6, 9.2, 10.1, 228.1, 226.5, 668.5, 666.3, 998.5, 996.3,
  449.1, 448.6, 778.9, 777.0, 559.2, 558.2, 0.3, 0.4, 0.1, 0.6, 778.1, 775.5, 668.8, 666.9, 339.3, 338.0,
  448.9, 447.5, 10.8, 11.6, 557.7, 556.0, 228.3, 228.1, 998.0, 995.8, 888.8, 887.6, 119.6, 120.2, 0.3, 0.3,
  0.6, 0.3, 557.6, 556.8, 339.3, 339.1, 888.0, 887.2, 998.5, 999.0, 778.9, 779.0, 10.2, 11.1, 117.6, 118.3,
  228.9, 229.2, 668.4, 669.1, 449.2, 448.9, 0.2, 0.5,
];
const norrisY = NORRIS.filter((_, i) => i % 2 === 0);
const norrisX = NORRIS.filter((_, i) => i % 2 === 1);

/** Longley, J. W. (JASA 62, 1967), n = 16: y, x1 ... x6. */
const LONGLEY = [
  [60323, 83.0, 234289, 2356, 1590, 107608, 1947],
  [61122, 88.5, 259426, 2325, 1456, 108632, 1948],
  [60171, 88.2, 258054, 3682, 1616, 109773, 1949],
  [61187, 89.5, 284599, 3351, 1650, 110929, 1950],
  [63221, 96.2, 328975, 2099, 3099, 112075, 1951],
  [63639, 98.1, 346999, 1932, 3594, 113270, 1952],
  [64989, 99.0, 365385, 1870, 3547, 115094, 1953],
  [63761, 100.0, 363112, 3578, 3350, 116219, 1954],
  [66019, 101.2, 397469, 2904, 3048, 117388, 1955],
  [67857, 104.6, 419180, 2822, 2857, 118734, 1956],
  [68169, 108.4, 442769, 2936, 2798, 120445, 1957],
  [66513, 110.8, 444546, 4681, 2637, 121950, 1958],
  [68655, 112.6, 482704, 3813, 2552, 123366, 1959],
  [69564, 114.2, 502601, 3931, 2514, 125368, 1960],
  [69331, 115.7, 518173, 4806, 2572, 127852, 1961],
  [70551, 116.9, 554894, 4007, 2827, 130081, 1962],
];

describe("NIST StRD Norris", () => {
  it("agrees with the certified line, errors and R squared", () => {
    const fit = linearRegression(norrisX, norrisY);
    expectDigits(fit.intercept, -0.262323073774029, 11);
    expectDigits(fit.slope, 1.00211681802045, 13);
    expectDigits(fit.interceptStandardError, 0.232818234301152, 11);
    expectDigits(fit.slopeStandardError, 0.429796848199937e-3, 11);
    expectDigits(fit.residualStandardDeviation, 0.884796396144373, 11);
    expectDigits(fit.residualSumOfSquares, 26.6173985294224, 11);
    expectDigits(fit.rSquared, 0.999993745883712, 13);
    expect(fit.degreesOfFreedom).toBe(34);
  });

  it("agrees by the general solver too", () => {
    const fit = leastSquares([norrisX.map(() => 1), norrisX], norrisY)!;
    expectDigits(fit.coefficients[0]!, -0.262323073774029, 11);
    expectDigits(fit.coefficients[1]!, 1.00211681802045, 13);
    expectDigits(fit.standardErrors[0]!, 0.232818234301152, 11);
  });
});

describe("NIST StRD Longley", () => {
  const fit = leastSquares(
    [LONGLEY.map(() => 1), ...[1, 2, 3, 4, 5, 6].map((j) => LONGLEY.map((row) => row[j]!))],
    LONGLEY.map((row) => row[0]!),
  )!;

  it("agrees with the certified coefficients to 10 digits", () => {
    const certified = [
      -3482258.63459582, 15.0618722713733, -0.35819179292591e-1, -2.02022980381683, -1.03322686717359,
      -0.511041056535807e-1, 1829.15146461355,
    ];
    certified.forEach((value, j) => {
      expectDigits(fit.coefficients[j]!, value, 10);
    });
  });

  it("agrees with the certified standard errors to 10 digits", () => {
    const certified = [
      890420.383607373, 84.9149257747669, 0.334910077722432e-1, 0.488399681651699, 0.214274163161675,
      0.22607320006937, 455.478499142212,
    ];
    certified.forEach((value, j) => {
      expectDigits(fit.standardErrors[j]!, value, 10);
    });
  });

  it("agrees with the certified residual standard deviation and R squared", () => {
    expectDigits(fit.residualStandardDeviation, 304.854073561965, 10);
    expectDigits(fit.rSquared, 0.995479004577296, 12);
  });
});
