import { describe, expect, it } from "vitest";
import { budgetAxis, budgetReach } from "../../../src/show/charts/budgetScale.ts";
import { splitAtGaps } from "../../../src/show/charts/gaps.ts";
import {
  endHeights,
  gapsOf,
  limitsOffScale,
  linePath,
  MOST_TABLE_ROWS,
  panelScale,
  tableRows,
  timeTicks,
  verdictShape,
} from "../../../src/show/charts/index.ts";
import { spreadLabels } from "../../../src/show/charts/spreadLabels.ts";
import { valueScale } from "../../../src/show/charts/valueScale.ts";

const NAN = Number.NaN;

describe("holes", () => {
  const x = [0, 1, 2, 10, 11, 12, 13];
  const y = [1, 2, 3, 4, NAN, NAN, 5];
  const gaps = gapsOf(x, y, { first: 0, last: 6 }, 2);

  it("are found between rows that hold a value", () => {
    expect(gaps).toEqual([
      { from: 2, to: 10 },
      { from: 10, to: 13 },
    ]);
  });

  it("leave the line open, a lone value gets a dot", () => {
    expect(splitAtGaps([0, 1, 2, 3, 6], x, gaps)).toEqual([[0, 1, 2], [3], [6]]);
    const trace = { x, y, first: 0, last: 6, gaps };
    const d = linePath(trace, { fromX: 0, toX: 13, fromY: 0, toY: 5, columns: 100 });
    expect(d.match(/M/g)).toHaveLength(3);
    expect(d.match(/h1/g)).toHaveLength(2);
  });

  it("leave whole points and whole steps that lead to every row", () => {
    const rows = Array.from({ length: 50 }, (_, k) => k);
    const trace = { x: rows, y: rows.map((k) => 40 * Math.sin(k)), first: 0, last: 49, gaps: [] };
    const d = linePath(trace, { fromX: 0, toX: 49, fromY: -50, toY: 50, columns: 100 });
    let [x, y] = [0, 0];
    const reached = [...d.matchAll(/(-?\d+),(-?\d+)/g)].map((step) => {
      [x, y] = [x + Number(step[1]), y + Number(step[2])];
      return [x, y];
    });
    expect(d).toMatch(/^M\d+,\d+l[-\d, ]+$/);
    expect(reached).toEqual(
      rows.map((k) => [Math.round((8000 * k) / 49), Math.round((50 - 40 * Math.sin(k)) * 10)]),
    );
  });

  it("do not open for a single missing sample", () => {
    expect(gapsOf([0, 1, 2], [1, NAN, 1], { first: 0, last: 2 }, 2)).toEqual([]);
  });
});

describe("valueScale", () => {
  it("starts at 0 when asked to and lower only for negative values", () => {
    expect(valueScale(20, 80, true).from).toBe(0);
    expect(valueScale(-5, 80, true).from).toBeLessThan(-5);
  });

  it("reaches over its data on both sides otherwise", () => {
    const scale = valueScale(3.3, 4.2, false);
    expect(scale.from).toBeLessThan(3.3);
    expect(scale.from).toBeGreaterThan(2.9);
    expect(scale.to).toBeGreaterThan(4.2);
    expect(scale.decimals).toBe(1);
  });

  it("gives a flat line a span", () => {
    const scale = valueScale(5, 5, false);
    expect(scale.to).toBeGreaterThan(scale.from);
  });
});

describe("timeTicks", () => {
  it("counts in round steps and stays below the most asked for", () => {
    expect(timeTicks(0, 372, 10)).toEqual([0, 60, 120, 180, 240, 300, 360]);
    expect(timeTicks(58.2, 59.4, 10)).toContain(58.4);
    for (const span of [3, 40, 372, 1800, 30_000])
      expect(timeTicks(0, span, 10).length).toBeLessThanOrEqual(11);
  });
});

describe("spreadLabels", () => {
  it("keeps labels apart, in order and inside", () => {
    const placed = spreadLabels([50, 51, 49, 99], 10);
    const sorted = [...placed].sort((a, b) => a - b);
    for (let index = 1; index < sorted.length; index++) {
      expect((sorted[index] ?? 0) - (sorted[index - 1] ?? 0)).toBeGreaterThanOrEqual(10 - 1e-9);
    }
    expect((placed[2] ?? 0) < (placed[0] ?? 0) && (placed[0] ?? 0) < (placed[1] ?? 0)).toBe(true);
    expect(Math.max(...placed)).toBeLessThanOrEqual(95);
  });
});

describe("endHeights", () => {
  it("uses the last value on show and is null without one", () => {
    const trace = (y: number[]) => ({ x: [0, 1, 2], y, first: 0, last: 2, gaps: [] });
    const series = [
      { id: "a", words: "a", style: 1 as const, trace: trace([0, 5, 10]) },
      { id: "b", words: "b", style: 2 as const, trace: trace([NAN, NAN, NAN]) },
    ];
    expect(endHeights({ series }, { from: 0, to: 10, ticks: [], decimals: 0 }, 1)).toEqual([50, null]);
  });
});

describe("tableRows", () => {
  const x = Float64Array.from({ length: 100_000 }, (_, row) => row / 10);

  it("holds regular steps, the last row and every extreme, never more than 200", () => {
    const { rows, stepS } = tableRows(x, { first: 0, last: 99_999 }, [12_345, 77]);
    expect(rows.length).toBeLessThanOrEqual(MOST_TABLE_ROWS);
    expect(rows).toEqual(expect.arrayContaining([0, 77, 12_345, 99_999]));
    expect(stepS).toBe(120);
  });

  it("steps every 10 s in a short flight", () => {
    const { rows, stepS } = tableRows(x, { first: 100, last: 3820 }, []);
    expect(stepS).toBe(10);
    expect(rows.slice(0, 3)).toEqual([100, 200, 300]);
  });
});

describe("budgetAxis", () => {
  it("keeps the labels apart however far the axis reaches", () => {
    const labels = (reach: number) =>
      [...budgetAxis(reach).text.matchAll(/>([\d.]+ %)</g)].map((one) => one[1]);
    expect(labels(1.25)).toEqual(["0 %", "25 %", "50 %", "75 %", "100 %"]);
    expect(labels(2)).toEqual(["0 %", "50 %", "100 %", "150 %"]);
  });
});

describe("budgetReach", () => {
  const bar = (high: number) => ({
    value: high,
    low: high,
    high,
    plan: null,
    reference: { kind: "wall" as const },
  });

  it("shows a quarter beyond the limit and never squeezes beyond twice", () => {
    expect(budgetReach([bar(0.4)])).toBe(1.25);
    expect(budgetReach([bar(0.4), bar(1.4)])).toBeCloseTo(1.47);
    expect(budgetReach([bar(7)])).toBe(2);
  });
});

describe("verdictShape", () => {
  it("draws four different outlines", () => {
    const shapes = (["within", "close", "outside", "not judged"] as const).map(
      (word) => verdictShape(word).text,
    );
    expect(new Set(shapes).size).toBe(4);
  });
});

describe("panelScale", () => {
  const trace = { x: [0, 1], y: [0, 50], first: 0, last: 1, gaps: [] };
  const panel = (values: readonly number[]) => ({
    id: "current",
    title: "Current",
    unit: "A",
    decimals: 1,
    fromX: 0,
    toX: 1,
    startsAtZero: true,
    series: [{ id: "current", words: "current", style: 1 as const, trace }],
    limits: values.map((value) => ({
      value,
      words: `limit ${value} A`,
      source: "",
      forbidden: "above" as const,
    })),
    marks: [],
    phases: [],
    gaps: [],
  });

  it("reaches over the nearest limit and names those that would flatten the line", () => {
    expect(panelScale(panel([120, 150])).to).toBeGreaterThan(120);
    expect(limitsOffScale(panel([120, 150])).map(({ value }) => value)).toEqual([150]);
    expect(limitsOffScale(panel([200])).map(({ value }) => value)).toEqual([200]);
  });

  it("goes only a sliver below 0 for a few negative values", () => {
    const below = { ...trace, y: [-0.5, 50] };
    const [series] = panel([]).series;
    expect(
      panelScale({ ...panel([]), series: series ? [{ ...series, trace: below }] : [] }).from,
    ).toBeGreaterThan(-2);
  });
});
