import { describe, expect, it } from "vitest";
import {
  equalLoadLadder,
  type InchStep,
  inchRuleRange,
  oneInchRule,
} from "../../../src/flight/prediction/index.ts";
import { loadRatio, PROPELLER_KINDS, type PropellerKind } from "../../../src/physics/index.ts";

/** Three propellers of each kind, of the sizes that the published measurements hold. */
const SIZES: Readonly<Record<PropellerKind, readonly (readonly [number, number])[]>> = {
  "thin electric": [
    [14, 12],
    [18, 12],
    [18, 10],
  ],
  "slow-fly": [
    [8, 6],
    [9, 7.5],
    [9, 6],
  ],
  sport: [
    [10, 10],
    [11, 8],
    [11, 5],
  ],
  folding: [
    [10, 12],
    [12, 10],
    [14, 8],
  ],
};

const shapeOf = (family: string, [diameterIn, pitchIn]: readonly [number, number]) => ({
  diameterIn,
  pitchIn,
  blades: 2,
  family,
});

function lineOf(
  kind: string,
  [diameterIn, pitchIn]: readonly [number, number],
  steps: readonly InchStep[],
): string {
  const parts = steps.map(
    ({ steps: count, diameterIn: d, pitchIn: p, load, verdict }) =>
      `${count} -> ${d}x${p}: x${load.value.toFixed(2)} (${load.low.toFixed(2)} to ${load.high.toFixed(2)}; two propellers ${load.lowOfTwo.toFixed(2)} to ${load.highOfTwo.toFixed(2)}) ${verdict}`,
  );
  return `${kind.padEnd(14)}${`${diameterIn}x${pitchIn}`.padEnd(8)}${parts.join(" | ")}`;
}

describe("one inch up in diameter and one down in pitch (common practice, no published source)", () => {
  const rows = PROPELLER_KINDS.flatMap((kind) =>
    SIZES[kind].map((size) => ({ kind, size, steps: oneInchRule(shapeOf(kind, size)) })),
  );

  it("is held against the published line of each kind, one step and four", () => {
    console.log(rows.map(({ kind, size, steps }) => lineOf(kind, size, steps)).join("\n"));
    expect(rows.map(({ steps }) => steps.map((one) => one.steps))).toEqual(rows.map(() => [1, 4]));
    for (const { steps } of rows) {
      for (const { load } of steps) {
        expect(load.low).toBeLessThan(load.value);
        expect(load.high).toBeGreaterThan(load.value);
        expect(load.lowOfTwo).toBeLessThanOrEqual(load.low);
        expect(load.highOfTwo).toBeGreaterThanOrEqual(load.high);
      }
    }
  });

  it("holds for one step of large thin electric propellers, and fails for steep sport ones", () => {
    const verdicts = (kind: PropellerKind, index: number) =>
      rows.filter((row) => row.kind === kind).map(({ steps }) => steps[index]?.verdict);
    expect(verdicts("thin electric", 0)).toEqual(["cannot be told", "holds", "holds"]);
    expect(verdicts("sport", 0)).toEqual(["fails", "fails", "cannot be told"]);
    expect(verdicts("thin electric", 1)).toEqual(["fails", "cannot be told", "cannot be told"]);
    expect(verdicts("sport", 1)).toEqual(["fails", "cannot be told", "cannot be told"]);
  });

  it("names the pitches at one diameter between which one step holds", () => {
    const range = inchRuleRange(shapeOf("thin electric", [18, 10]));
    console.log(`18 in thin electric: one step holds from ${range?.fromIn} to ${range?.toIn} in of pitch`);
    expect(range).not.toBeNull();
    expect(range!.fromIn).toBeLessThanOrEqual(10);
    expect(range!.toIn).toBeGreaterThanOrEqual(12);
    expect(oneInchRule(shapeOf("thin electric", [18, range!.toIn]))[0]?.verdict).toBe("holds");
    expect(oneInchRule(shapeOf("thin electric", [18, range!.toIn + 0.5]))[0]?.verdict).not.toBe("holds");
    expect(inchRuleRange(shapeOf("sport", [30, 10]))).toBeNull();
  });

  it("is not told where the data end", () => {
    const [, four] = oneInchRule(shapeOf("thin electric", [18, 10]));
    expect(four).toMatchObject({ diameterIn: 22, pitchIn: 6, verdict: "cannot be told" });
    expect(four?.load.isExtrapolated).toBe(true);
    expect(oneInchRule(shapeOf("sport", [10, 3]))).toHaveLength(1);
  });

  it("agrees with the published means themselves: 16x10 against 14x12 and 18x8 (UIUC, thin electric)", () => {
    // Static CP of the UIUC Propeller Data Site's means: 14x12 0.0631, 16x10 0.0393, 18x8 0.0264.
    const load = (coefficient: number, diameterIn: number) => coefficient * diameterIn ** 5;
    const two = loadRatio(shapeOf("thin electric", [14, 12]), shapeOf("thin electric", [16, 10]));
    const four = loadRatio(shapeOf("thin electric", [14, 12]), shapeOf("thin electric", [18, 8]));
    const measuredTwo = load(0.0393, 16) / load(0.0631, 14);
    const measuredFour = load(0.0264, 18) / load(0.0631, 14);
    expect(measuredTwo).toBeGreaterThan(two.lowOfTwo);
    expect(measuredTwo).toBeLessThan(two.highOfTwo);
    expect(measuredFour).toBeGreaterThan(four.lowOfTwo);
    expect(measuredFour).toBeLessThan(four.highOfTwo);
  });
});

describe("the ladder of equal loads", () => {
  it("goes down in pitch as it goes up in diameter and keeps the load as near as half inches allow", () => {
    const ladder = equalLoadLadder(shapeOf("thin electric", [18, 10]));
    expect(ladder.map(({ diameterIn }) => diameterIn)).toEqual([15, 16, 17, 18, 19, 20, 21]);
    const pitches = ladder.map(({ pitchIn }) => pitchIn);
    expect(pitches).toEqual(pitches.toSorted((one, other) => other - one));
    expect(ladder.find(({ diameterIn }) => diameterIn === 18)).toMatchObject({
      pitchIn: 10,
      load: { value: 1 },
    });
    for (const { load } of ladder) expect(Math.abs(load.value - 1)).toBeLessThan(0.06);
    for (const { pitchIn } of ladder) expect((2 * pitchIn) % 1).toBe(0);
  });
});
