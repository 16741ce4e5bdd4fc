import { describe, expect, it } from "vitest";
import {
  type FlightChart,
  flightDrawing,
  flightLimitsOffScale,
  intervalScales,
  seriesMark,
  sumDrawing,
} from "../../../src/show/charts/index.ts";

const NAMES = { nameId: "n", descriptionId: "d" };

function chartOf(changed: Partial<FlightChart> = {}): FlightChart {
  const points = [40, 44, 42].map((value, place) => ({
    fromPlace: place,
    toPlace: place,
    value,
    low: value - 2,
    high: value + 2,
  }));
  return {
    id: "c",
    axis: { places: 3, ticks: [{ place: 0, words: "1" }], days: [] },
    startsAtZero: false,
    series: [{ id: "s", words: "pack A", style: 2, points }],
    limits: [],
    plans: [],
    breaks: [],
    ...changed,
  };
}

describe("a chart over flights", () => {
  it("draws a mark and an interval a flight, with the axis over all of them", () => {
    const { plot, scale } = flightDrawing(chartOf(), NAMES);
    expect(plot.text.match(/<line x1/g)).toHaveLength(3);
    expect(plot.text.match(/<path d="M-4 -4/g)).toHaveLength(3);
    expect(scale.from).toBeLessThanOrEqual(38);
    expect(scale.to).toBeGreaterThanOrEqual(46);
  });

  it("keeps one wild interval from flattening the points", () => {
    const wild = { fromPlace: 3, toPlace: 3, value: 43, low: -900, high: 900 };
    const [first] = chartOf().series;
    if (first === undefined) throw new Error("the chart has no series");
    const series = [{ ...first, points: [...first.points, wild] }];
    const { scale, plot } = flightDrawing(chartOf({ series }), NAMES);
    expect(scale.to - scale.from).toBeLessThan(20);
    expect(plot.text).toContain('y1="0%" y2="100%"');
  });

  it("reaches to a near limit and to the plan, and names a far limit", () => {
    const near = { value: 50, words: "limit 50", source: "x", forbidden: "above" } as const;
    const far = { ...near, value: 900 };
    const chart = chartOf({ limits: [near, far], plans: [{ value: 30, words: "plan 30" }] });
    const { scale, plot } = flightDrawing(chart, NAMES);
    expect(scale.to).toBeGreaterThan(50);
    expect(scale.from).toBeLessThan(30);
    expect(plot.text).toContain("plan 30");
    expect(flightLimitsOffScale(chart)).toEqual([far]);
  });

  it("draws one flight and none at all without a number that is not one", () => {
    for (const series of [
      [],
      [{ ...chartOf().series[0]!, points: chartOf().series[0]!.points.slice(0, 1) }],
    ]) {
      const axis = { places: series.length, ticks: [], days: [] };
      const drawing = flightDrawing(chartOf({ series, axis }), NAMES);
      const text = Object.values(drawing)
        .map((part) => ("text" in part ? part.text : ""))
        .join("");
      expect(text).not.toMatch(/NaN|Infinity|undefined/);
    }
  });

  it("names changed parts only while there is room", () => {
    const breaks = [0, 1, 2, 3].map((place) => ({ place, words: `part ${place}` }));
    expect(flightDrawing(chartOf({ breaks: breaks.slice(0, 3) }), NAMES).breakNames.text).toContain("part 2");
    expect(flightDrawing(chartOf({ breaks }), NAMES).breakNames.text).not.toContain("part");
    expect(flightDrawing(chartOf({ breaks }), NAMES).plot.text.match(/phase-edge/g)).toHaveLength(4);
  });
});

describe("small scales", () => {
  it("put a value and its interval on one scale with the others", () => {
    const marks = [{ before: 30, value: 34, low: 33, high: 35 }, null];
    const { rows, words } = intervalScales(marks, "mΩ");
    expect(rows[0]?.text).toMatch(/class="spread" x1="[\d.]+%"/);
    expect(rows[1]?.text).toBe("");
    expect(words).toMatch(/^The scale runs from \d+ mΩ to \d+ mΩ\.$/);
    expect(intervalScales([null], "mΩ").words).toBe("");
  });

  it("keep a step of a sum inside its scale", () => {
    expect(sumDrawing({ from: 0.9, to: 0.6, kind: "taken" }).text).toContain('x="60%" width="30%"');
    expect(sumDrawing({ from: 0, to: 3, kind: "rest" }).text).toContain('x="0%" width="100%"');
  });

  it("tell series apart by shape", () => {
    const shapes = ([1, 2, 3, 4] as const).map((style) => seriesMark(style).text.replace(/s\d/, ""));
    expect(new Set(shapes).size).toBe(4);
  });
});
