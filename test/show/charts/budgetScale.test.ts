import { describe, expect, it } from "vitest";
import { type BudgetBar, budgetScales } from "../../../src/show/charts/index.ts";

const wall = { kind: "wall" } as const;

function drawn(bar: BudgetBar): string {
  return budgetScales([bar]).rows[0]?.text ?? "";
}

describe("the drawing of a budget line", () => {
  it("draws the interval, the point, the plan and the wall on the shared axis", () => {
    const text = drawn({ value: 0.75, low: 0.7, high: 0.8, plan: 0.5, reference: wall });
    expect(text).toContain('class="interval" x="56%" width="8%"');
    expect(text).toContain('<svg x="60%" overflow="visible"><circle class="point"');
    expect(text).toContain('<svg x="40%" overflow="visible"><path class="plan"');
    expect(text).toContain('<line class="wall" x1="80%"');
  });

  it("draws an open end as a dashed bar to the edge with an arrow", () => {
    const text = drawn({ value: 0.75, low: 0.7, high: null, plan: null, reference: wall });
    expect(text).toContain('class="interval open" x="56%" width="44%"');
    expect(text).toContain('<svg x="100%" overflow="visible"><path class="point"');
  });

  it("marks a value beyond the axis with an arrow at the edge", () => {
    const text = drawn({ value: 5, low: 4.9, high: 5.1, plan: null, reference: wall });
    expect(text).toContain('<svg x="100%" overflow="visible"><path class="point"');
    expect(text).not.toContain("<circle");
  });

  it("draws nothing measured where nothing is known, and frames the band of a plan", () => {
    const text = drawn({
      value: null,
      low: null,
      high: null,
      plan: 1,
      reference: { kind: "band", from: 1, to: 9 },
    });
    expect(text).not.toMatch(/interval|"point"/);
    expect(text).toContain('<rect class="band" x="80%" width="20%"');
  });
});
