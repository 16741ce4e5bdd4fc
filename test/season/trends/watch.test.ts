import { describe, expect, it } from "vitest";
import { RandomNumbers } from "../../../src/base/statistics/index.ts";
import { watchSeries } from "../../../src/season/trends/index.ts";

/** Normal by the sum of twelve uniforms: enough for a noise of 4 %. */
function noise(random: RandomNumbers, size: number): number {
  let sum = -6;
  for (let i = 0; i < 12; i += 1) sum += random.next();
  return size * sum;
}

function season(random: RandomNumbers, shape: (flight: number) => number): readonly number[] {
  return Array.from({ length: 12 }, (_, flight) => shape(flight) * (1 + noise(random, 0.04)));
}

describe("watching a series", () => {
  it("says nothing with fewer than six points, however steep", () => {
    expect(watchSeries([1, 2, 3, 4, 5], "up")).toBeNull();
  });

  it("finds six points that only rise: 1/720 by chance, the exact table's p of .0014", () => {
    expect(watchSeries([1, 2, 3, 4, 5, 6], "up")).toMatchObject({ kind: "trend", afterPoints: 6 });
    expect(watchSeries([1, 2, 3, 4, 5, 6], "down")).toBeNull();
  });

  it("names the split of a sudden change", () => {
    const values = [1, 1.02, 0.99, 1.01, 0.98, 1, 1.01, 1.25, 1.22, 1.26, 1.24, 1.23];
    const alarm = watchSeries(values, "up");
    expect(alarm).not.toBeNull();
    expect(alarm?.kind === "shift" ? alarm.splitAfter : 7).toBe(7);
  });

  it("forgets a step that lies 48 points back, and finds one in a long series where it is", () => {
    const random = new RandomNumbers(6);
    const long = (stepAfter: number) =>
      Array.from({ length: 80 }, (_, point) => (point < stepAfter ? 1 : 1.15) * (1 + noise(random, 0.02)));
    expect(watchSeries(long(16), "up", 4, 4000)).toBeNull();
    expect(watchSeries(long(60), "up", 4, 4000)).toMatchObject({ afterPoints: expect.any(Number) });
  });

  it("cries wolf in any of four series in at most 5 % of seasons, and finds 2 % a flight (seed 5)", () => {
    const random = new RandomNumbers(5);
    const seasons = 60;
    let falseSeasons = 0;
    let found = 0;
    for (let i = 0; i < seasons; i += 1) {
      const quiet = Array.from({ length: 4 }, () => season(random, () => 1));
      if (quiet.some((values) => watchSeries(values, "up", 4, 4000))) falseSeasons += 1;
      if (
        watchSeries(
          season(random, (flight) => 1.02 ** flight),
          "up",
          4,
          4000,
        )
      )
        found += 1;
    }
    console.log(`seed 5: false in ${falseSeasons} of ${seasons} seasons, found in ${found}`);
    expect(falseSeasons).toBeLessThanOrEqual(7); // 5 % of 60 is 3; 8 or more has a chance below 1 %
    expect(found).toBeGreaterThanOrEqual(0.8 * seasons);
  });
});
