import { beforeAll, describe, expect, it } from "vitest";
import {
  type PlanRow,
  type PlanRows,
  planTable,
  scoredFromLog,
  scoredSwaps,
  scoredWithoutLog,
  seedsFrom,
} from "./scoredPlans.ts";

// A guard; `npm run bench:plan` scores hundreds of aircraft a case.
const SEEDS = seedsFrom(71_001, 10);
const SWAP_SEEDS = seedsFrom(82_001, 10);

/** 90 % less two standard errors of so few aircraft. */
function leastCover({ given }: PlanRow): number {
  return 0.9 - 2 * Math.sqrt((0.9 * 0.1) / given);
}

function expectCovered(rows: PlanRows, aircraft: number): void {
  for (const [name, row] of rows) {
    expect(row.given, name).toBeGreaterThanOrEqual(0.9 * aircraft);
    expect(row.cover, name).toBeGreaterThanOrEqual(leastCover(row));
  }
}

describe("predictions over random aircraft, held against the simulator", () => {
  let published: PlanRows;
  let measured: PlanRows;

  beforeAll(() => {
    published = scoredWithoutLog(SEEDS);
    measured = scoredFromLog(SEEDS);
    console.log(planTable("From the aircraft file and published ranges alone", SEEDS, published));
    console.log(planTable("The next flight from one log", SEEDS, measured));
  }, 120_000);

  it.each(["staticCurrentA", "staticRpm", "staticPowerW", "powerLoadingWPerKg"] as const)(
    "a plan without a log covers the true %s and is not absurdly wide",
    (name) => {
      const row = published.get(name)!;
      expect(row.given).toBe(SEEDS.length);
      expect(row.cover).toBeGreaterThanOrEqual(leastCover(row));
      expect(row.halfWidth).toBeLessThan(name === "staticRpm" ? 0.1 : 0.35);
      expect(measured.get(name)!.halfWidth).toBeLessThan(row.halfWidth);
    },
  );

  it("a plan from one log covers what the next flight truly does", () => {
    expectCovered(measured, SEEDS.length);
  });

  it("a swap covers what the other propeller truly does", () => {
    const rows = scoredSwaps(SWAP_SEEDS);
    console.log(planTable("Another propeller from one log of the first", SWAP_SEEDS, rows));
    expectCovered(rows, SWAP_SEEDS.length);
    expect(rows.get("staticCurrentA")!.halfWidth).toBeLessThan(0.25);
  }, 120_000);
});
