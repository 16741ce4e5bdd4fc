import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { describe, expect, it } from "vitest";
import { median, quantile } from "../../src/base/statistics/index.ts";
import { diameterMatters, fitStaticMeans, predictLog } from "../../src/physics/coefficientFit.ts";
import { PROPELLER_KINDS, STATIC_MEANS } from "../../src/physics/staticMeans.ts";
import { sharedFolder, withShared } from "../support/shared.ts";

// UIUC Propeller Data Site, volumes 1 to 4, archive of 27 June 2022: 116 two-blade propellers.

/** Predicts each propeller from the others of its kind: how many fall inside, and how wide the intervals are. */
function leaveOneOut(name: "power" | "thrust") {
  const inside: boolean[] = [];
  const halfWidths: number[] = [];
  for (const kind of PROPELLER_KINDS) {
    const means = STATIC_MEANS[kind];
    means.forEach(([diameterIn, pitchIn, ct, cp], i) => {
      const others = means.filter((_, j) => j !== i);
      const fit = fitStaticMeans(others, name, diameterMatters(kind, name));
      const { log, standardDeviation } = predictLog(fit, diameterIn, pitchIn);
      const reach = fit.t * standardDeviation;
      inside.push(Math.abs(Math.log(name === "power" ? cp : ct) - log) <= reach);
      halfWidths.push(Math.sinh(reach));
    });
  }
  const cover = inside.filter(Boolean).length / inside.length;
  return { count: inside.length, cover, halfWidth: median(halfWidths), widest: quantile(halfWidths, 0.95) };
}

describe("static coefficients of a propeller left out", () => {
  it("power: covered in at least 92 % with a median half-width under 25 %", () => {
    const result = leaveOneOut("power");
    expect(result.count).toBe(116);
    expect(result.cover).toBeGreaterThanOrEqual(0.92);
    expect(result.cover).toBeLessThan(1);
    expect(result.halfWidth).toBeLessThan(0.25);
    expect(result.widest).toBeLessThan(0.4);
  });

  it("thrust: likewise", () => {
    const result = leaveOneOut("thrust");
    expect(result.cover).toBeGreaterThanOrEqual(0.92);
    expect(result.halfWidth).toBeLessThan(0.25);
  });

  it("the diameter earns its place for thin electric propellers", () => {
    const means = STATIC_MEANS["thin electric"];
    const without = fitStaticMeans(means, "power", false).standardDeviation;
    expect(fitStaticMeans(means, "power", true).standardDeviation).toBeLessThan(0.75 * without);
  });
});

describe("the table", () => {
  it("holds 34 thin electric, 11 slow-fly, 31 sport and 40 folding propellers", () => {
    expect(PROPELLER_KINDS.map((kind) => STATIC_MEANS[kind].length)).toEqual([34, 11, 31, 40]);
  });

  it.skipIf(sharedFolder() === null)(withShared("is the stored table"), () => {
    const file = resolve(sharedFolder()!, "values/propeller/static-means.csv");
    const rows = readFileSync(file, "utf8").trim().split("\n").slice(1);
    const stored = rows
      .map((row) => row.split(","))
      .map(([kind, d, p, , , , , ct, cp]) => [kind, ...[d, p, ct, cp].map(Number)].join(" "));
    const own = PROPELLER_KINDS.flatMap((kind) => STATIC_MEANS[kind].map((one) => [kind, ...one].join(" ")));
    expect(own.sort()).toEqual(stored.sort());
  });
});
