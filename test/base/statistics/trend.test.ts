import { describe, expect, it } from "vitest";
import { mannKendall, RandomNumbers, shiftTest, theilSen } from "../../../src/base/statistics/index.ts";

describe("shiftTest", () => {
  it("agrees with counting all orders of six values", () => {
    const values = [1, 2.5, 1.7, 9, 8, 8.6];
    const counted = countAllOrders(values);
    const test = shiftTest(values, "up", 1, 40_000)!;
    expect(test.splitAfter).toBe(3);
    expect(test.shift).toBeCloseTo((9 + 8 + 8.6) / 3 - (1 + 2.5 + 1.7) / 3, 12);
    expect(Math.abs(test.p - counted)).toBeLessThan(0.005);
  });

  it("finds a fall by looking down, not up", () => {
    const values = [5, 5.2, 4.9, 5.1, 3, 3.1, 2.9, 3.2];
    expect(shiftTest(values, "down", 3, 5000)!.p).toBeLessThan(0.03);
    expect(shiftTest(values, "down", 3, 5000)!.shift).toBeCloseTo(-2, 12);
    expect(shiftTest(values, "up", 3, 5000)!.p).toBeGreaterThan(0.5);
  });

  it("repeats for a seed, ignores level and scale, and gives 1 when nothing varies", () => {
    const values = [1, 3, 2, 5, 4, 6];
    const p = shiftTest(values, "up", 9, 2000)!.p;
    expect(shiftTest(values, "up", 9, 2000)!.p).toBe(p);
    expect(shiftTest(values.map((value) => 1000 + 0.01 * value), "up", 9, 2000)!.p).toBe(p); // biome-ignore format: one case
    expect(shiftTest([2, 2, 2, 2, 2], "up", 1, 100)!.p).toBe(1);
  });

  it("stops early above a level and gives the same to the last bit below it (seed 5)", () => {
    const random = new RandomNumbers(5);
    let [below, above] = [0, 0];
    for (let k = 0; k < 60; k += 1) {
      const values = Array.from({ length: 12 }, (_, at) => random.next() + (at >= 7 ? 0.03 * (k % 20) : 0));
      const whole = shiftTest(values, "up", k, 1000)!;
      expect(shiftTest(values, "up", k, 1000, 0.05)).toEqual(whole.p > 0.05 ? null : whole);
      if (whole.p > 0.05) above += 1;
      else below += 1;
    }
    expect(Math.min(below, above)).toBeGreaterThan(10);
  });

  it("is null with fewer than four values and refuses NaN", () => {
    expect(shiftTest([1, 2, 3], "up", 1)).toBeNull();
    expect(() => shiftTest([1, 2, 3, Number.NaN], "up", 1)).toThrow("NaN");
  });

  it("alarms no more often than its level without a shift (seed 11)", () => {
    const random = new RandomNumbers(11);
    let alarms = 0;
    for (let trial = 0; trial < 300; trial++) {
      const values = Array.from({ length: 8 }, () => random.next());
      if (shiftTest(values, "up", trial, 400)!.p <= 0.05) alarms++;
    }
    expect(alarms / 300).toBeLessThan(0.085);
    expect(alarms).toBeGreaterThan(3);
  });
});

describe("mannKendall and theilSen", () => {
  it("mirror under a change of sign", () => {
    const x = [1, 2, 3, 4, 5, 6, 7, 8];
    const y = [3, 1, 4, 1.5, 9, 2.6, 5, 3.5];
    const up = mannKendall(x, y);
    const down = mannKendall(x, y.map((value) => -value)); // biome-ignore format: one case
    expect(down.s).toBe(-up.s);
    expect(down.risingP).toBeCloseTo(up.fallingP, 12);
    const line = theilSen(x, y);
    const mirrored = theilSen(x, y.map((value) => -value)); // biome-ignore format: one case
    expect(mirrored.slope).toBeCloseTo(-line.slope, 12);
    expect(mirrored.low).toBeCloseTo(-line.high!, 12);
  });

  it("never lets equal values or NaN look like a trend", () => {
    const flat = mannKendall([1, 2, 3, 4, 5], [2, 2, 2, 2, 2]);
    expect([flat.s, flat.z, flat.risingP, flat.fallingP, flat.isExact]).toEqual([0, 0, 1, 1, false]);
    expect(() => mannKendall([1, 2, 3], [1, Number.NaN, 3])).toThrow("NaN");
    expect(() => theilSen([4, 4], [1, 2])).toThrow("all are 4");
    expect(() => theilSen([1], [1])).toThrow("at least 2");
  });

  it("exact and normal tails meet for 40 values", () => {
    const x = Array.from({ length: 40 }, (_, i) => i);
    const y = x.map((i) => Math.sin(i * 12.9898) + i * 0.02);
    const test = mannKendall(x, y);
    expect(test.isExact).toBe(true);
    expect(test.risingP + test.fallingP).toBeGreaterThan(1);
    const normal = mannKendall([...x, 40, 41], [...y, 1e9, 1e9]);
    expect(normal.isExact).toBe(false);
  });
});

function countAllOrders(values: readonly number[]): number {
  const statistic = (order: readonly number[]) => {
    let largest = Number.NEGATIVE_INFINITY;
    for (let k = 2; k <= order.length - 2; k++) {
      const before = order.slice(0, k).reduce((sum, value) => sum + value, 0) / k;
      const after = order.slice(k).reduce((sum, value) => sum + value, 0) / (order.length - k);
      largest = Math.max(largest, (after - before) * Math.sqrt((k * (order.length - k)) / order.length));
    }
    return largest;
  };
  const orders = permutations(values);
  const observed = statistic(values) - 1e-9;
  return orders.filter((order) => statistic(order) >= observed).length / orders.length;
}

function permutations(values: readonly number[]): number[][] {
  if (values.length < 2) return [[...values]];
  return values.flatMap((value, i) =>
    permutations(values.filter((_, j) => j !== i)).map((rest) => [value, ...rest]),
  );
}
