import { describe, expect, it } from "vitest";
import { atLeast, known, type Quantity, unknown } from "../../../src/base/quantity/index.ts";
import type { MeasureName } from "../../../src/flight/analysis/index.ts";
import type { Judgement } from "../../../src/flight/judgement/index.ts";
import { budgetLines } from "../../../src/show/report/budgetLines.ts";

function judgement(
  line: MeasureName,
  against: "plan" | "limit",
  value: number | null,
  measured: Quantity,
  sense: Judgement["sense"],
): Judgement {
  return { line, against, value, source: `${against}.${line}`, sense, measured, verdict: "within", text: "" };
}

const amps = known(60, 2, "A", "measured");
const volts = known(3.6, 0.09, "V", "measured");

describe("budgetLines", () => {
  it("puts an upper limit's measure at its share of the limit", () => {
    const [line] = budgetLines([judgement("peakCurrentA", "limit", 80, amps, "atMost")], 4.2).limits;
    expect(line?.bar).toEqual({
      value: 0.75,
      low: 58 / 80,
      high: 62 / 80,
      plan: null,
      reference: { kind: "wall" },
    });
  });

  it("counts cell volts down from a full cell, lower volts nearer to the wall", () => {
    const judgements = [
      judgement("minCellV", "limit", 3.3, volts, "atLeast"),
      judgement("minCellV", "plan", 3.5, volts, "atLeast"),
    ];
    const { limits, plans } = budgetLines(judgements, 4.2);
    expect(plans).toEqual([]);
    const bar = limits[0]?.bar;
    expect(bar?.value).toBeCloseTo(0.6 / 0.9);
    expect(bar?.low).toBeCloseTo(0.51 / 0.9);
    expect(bar?.high).toBeCloseTo(0.69 / 0.9);
    expect(bar?.plan).toBeCloseTo(0.7 / 0.9);
  });

  it("keeps the open end of a bound open, also when the axis runs the other way", () => {
    const bound = atLeast(3.6, 3.5, "V", "measured", "the log is cut");
    const bar = budgetLines([judgement("minCellV", "limit", 3.3, bound, "atLeast")], 4.2).limits[0]?.bar;
    expect(bar?.low).toBeNull();
    expect(bar?.high).toBeCloseTo(0.7 / 0.9);
  });

  it("frames where a planned value should lie", () => {
    const bands = (["around", "atMost", "atLeast"] as const).map(
      (sense) =>
        budgetLines([judgement("staticCurrentA", "plan", 55, amps, sense)], 4.2).plans[0]?.bar.reference,
    );
    expect(bands).toEqual([
      { kind: "band", from: 0.9, to: 1.1 },
      { kind: "band", from: 0, to: 1 },
      { kind: "band", from: 1, to: 9 },
    ]);
  });

  it("draws no bar for what is not known or cannot be scaled", () => {
    const lines = budgetLines(
      [
        judgement("motorPeakC", "limit", 100, unknown("degC", "no probe"), "atMost"),
        judgement("peakPowerW", "limit", 0, amps, "atMost"),
      ],
      4.2,
    ).limits;
    expect(lines.map((line) => line.bar.value)).toEqual([null, null]);
    expect(lines[0]?.measured).toBe("not known: no probe");
  });

  it("sets aside judgements without a number to judge by", () => {
    const { withoutReference } = budgetLines([judgement("peakRpm", "limit", null, amps, "atMost")], 4.2);
    expect(withoutReference).toHaveLength(1);
  });
});
