import { expect, it } from "vitest";
import { sharedDecays } from "../../../src/flight/analysis/index.ts";
import { decayAt } from "../../../src/physics/index.ts";

it("gives each flight what it would work out by itself, longer where another flight is", () => {
  const decays = sharedDecays();
  for (const [count, stepS, timeConstantS] of [
    [5, 2, 60],
    [9, 2, 60],
    [3, 2, 60],
    [4, 1, 60],
    [4, 2, 61],
  ] as const) {
    const shared = decays(count, stepS, timeConstantS).subarray(0, count);
    expect([...shared]).toEqual([...decayAt(count, stepS, timeConstantS)]);
  }
  expect(decays(9, 2, 60)).toBe(decays(3, 2, 60));
});
